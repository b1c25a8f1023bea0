import type { Latest, ObservedHour } from './contract.ts';
import type { Stamp } from '../cells/dates.ts';
import { Ledger } from './ledger.ts';
import { OpenHour } from './open-hour.ts';
import type { Pace } from './pace.ts';
import type { RowProblem } from './problem.ts';
import { duplicateOf, type Values } from './repeats.ts';
import { wallSeconds } from '../cells/stamp-time.ts';
import type { RowValues } from './row-values.ts';
import type { LakeClock } from '../cells/zone.ts';

const HOUR_s = 3600;

/**
 * Rows that are hours or parts of hours. A row of a record with longer steps stands for the hours up
 * to the next row, its precipitation spread evenly over them.
 */
export class HourRows {
	readonly #clock: LakeClock;
	readonly #pace: Pace;
	readonly #latest_s: number;
	readonly #ledger = new Ledger(5);
	readonly #timesInDoubledHours = new Map<number, number>();
	#pending = new Map<number, ObservedHour>();
	#open: OpenHour | null = null;

	constructor(clock: LakeClock, pace: Pace, latest?: Latest) {
		this.#clock = clock;
		this.#pace = pace;
		this.#latest_s = latest?.at_s ?? Infinity;
	}

	/** An hour that has not begun. */
	isAhead(stamp: Stamp): boolean {
		const wall_s = wallSeconds(stamp);
		const at_s =
			stamp.offset_s === null ? this.#clock.instants(wall_s)[0] : wall_s - stamp.offset_s;
		return at_s !== undefined && at_s > this.#latest_s;
	}

	get pending(): number {
		return this.#pending.size;
	}

	get isFull(): boolean {
		return this.#ledger.isFull;
	}

	take(stamp: Stamp, line: number, values: RowValues): RowProblem | null {
		const at_s = this.#instant(stamp);
		if (at_s === null) return { line, reason: SKIPPED };
		const start_s = this.#clock.hourStart_s(at_s);
		if (this.#open?.start_s === start_s) return this.#open.add(at_s, line, values);
		const duplicate = this.#close(start_s);
		this.#open = new OpenHour(start_s, line);
		this.#open.add(at_s, line, values);
		return duplicate;
	}

	finish(): RowProblem | null {
		return this.#close(null);
	}

	drain(): ObservedHour[] {
		const hours = [...this.#pending.values()];
		this.#pending = new Map();
		return hours;
	}

	/** A clock time without offset in the doubled hour is the first offset's first, then the second's. */
	#instant(stamp: Stamp): number | null {
		const wall_s = wallSeconds(stamp);
		if (stamp.offset_s !== null) return wall_s - stamp.offset_s;
		const [first, second] = this.#clock.instants(wall_s);
		if (first === undefined || second === undefined) return first ?? null;
		const times = this.#timesInDoubledHours.get(wall_s) ?? 0;
		this.#timesInDoubledHours.set(wall_s, times + 1);
		return (times % 2 === 0) === this.#pace.newestFirst ? second : first;
	}

	#close(next_s: number | null): RowProblem | null {
		const hour = this.#open;
		this.#open = null;
		if (!hour) return null;
		const { step_s, isEven } = this.#pace;
		const values = hour.values(isEven && step_s < HOUR_s ? Math.round(HOUR_s / step_s) : 1);
		if (step_s <= HOUR_s) return this.#put(hour.start_s, hour.line, values);
		const gap_s = next_s === null ? step_s : Math.abs(next_s - hour.start_s);
		const hours = Math.round(Math.min(step_s, gap_s) / HOUR_s);
		const parts = spread(values, hours);
		const [duplicate = null] = Array.from({ length: hours }, (_, at) =>
			this.#put(hour.start_s + at * HOUR_s, hour.line, parts)
		);
		return duplicate;
	}

	#put(at_s: number, line: number, values: Values): RowProblem | null {
		// The last row of a record with longer steps stands for hours that have not been.
		if (at_s > this.#latest_s) return null;
		const entry = this.#ledger.put(at_s, line, values);
		const [air = null, precipitation = null, snowfall = null, landSnow = null, wind = null] =
			entry.values;
		this.#pending.delete(at_s);
		this.#pending.set(at_s, {
			at_s,
			air_degC: air,
			precipitation_kg_m2: precipitation,
			snowfall_kg_m2: snowfall,
			landSnow_m: landSnow,
			wind_m_s: wind
		});
		return duplicateOf(entry, line, 'hour');
	}
}

const SKIPPED =
	'this time of day does not exist at the lake: clocks are set forward over it; if the record keeps standard time all year, put LST into the heading of the time column, or UTC if it keeps that';

function spread(values: Values, hours: number): Values {
	return values.map((value, at) =>
		value !== null && (at === 1 || at === 2) ? value / hours : value
	);
}
