import { tzOffset } from '@date-fns/tz';

const S_PER_DAY = 86_400;

/** How the clock times of a record are to be taken where they carry no offset of their own. */
export type ClockKind = 'local' | 'standard' | 'utc';

/** Clock times of a lake to instants. `standard` keeps the winter's offset all year. */
export class LakeClock {
	readonly #timeZone: string;
	readonly #kind: ClockKind;
	readonly #offsets = new Map<number, number>();

	constructor(timeZone: string, kind: ClockKind) {
		this.#timeZone = timeZone;
		this.#kind = kind;
		if (Number.isNaN(tzOffset(timeZone, new Date(0)))) {
			throw new RangeError(`timeZone must be an IANA name, got "${timeZone}"`);
		}
	}

	/**
	 * The instants at which the clock showed `wall_s`, earlier first: none in the hour that is skipped
	 * in spring, two in the hour that comes twice in autumn.
	 */
	instants(wall_s: number): number[] {
		if (this.#kind === 'utc') return [wall_s];
		if (this.#kind === 'standard') return [wall_s - this.#standardOffset_s(wall_s)];
		const day = Math.floor(wall_s / S_PER_DAY);
		const before_s = this.#offsetOnDay_s(day - 1);
		const after_s = this.#offsetOnDay_s(day + 2);
		if (before_s === after_s) return [wall_s - before_s];
		const candidates = [wall_s - before_s, wall_s - after_s].toSorted((a, b) => a - b);
		return candidates.filter((at_s) => at_s + this.offset_s(at_s) === wall_s);
	}

	/** Local time less UTC at an instant. */
	offset_s(at_s: number): number {
		return Math.round(tzOffset(this.#timeZone, new Date(at_s * 1000)) * 60);
	}

	/** Start of the clock hour of the lake that holds an instant. */
	hourStart_s(at_s: number): number {
		const day = Math.floor(at_s / S_PER_DAY);
		const before_s = this.#offsetOnDay_s(day - 1);
		const offset_s = before_s === this.#offsetOnDay_s(day + 2) ? before_s : this.offset_s(at_s);
		return Math.floor((at_s + offset_s) / 3600) * 3600 - offset_s;
	}

	#offsetOnDay_s(day: number): number {
		const known = this.#offsets.get(day);
		if (known !== undefined) return known;
		const offset_s = this.offset_s(day * S_PER_DAY);
		if (this.#offsets.size > 2000) this.#offsets.clear();
		this.#offsets.set(day, offset_s);
		return offset_s;
	}

	#standardOffset_s(wall_s: number): number {
		const year = new Date(wall_s * 1000).getUTCFullYear();
		const [january, july] = [0, 6].map((month) =>
			this.#offsetOnDay_s(Date.UTC(year, month, 1) / 1000 / S_PER_DAY)
		);
		return Math.min(january ?? 0, july ?? 0);
	}
}
