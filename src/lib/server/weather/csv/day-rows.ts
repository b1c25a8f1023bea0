import { isoDate, type IsoDate } from '#lib/model/calendar.ts';
import type { Latest, ObservedDay } from './contract.ts';
import type { Stamp } from '../cells/dates.ts';
import { Ledger } from './ledger.ts';
import type { RowProblem } from './problem.ts';
import { duplicateOf } from './repeats.ts';
import { dayOfStamp } from '../cells/stamp-time.ts';
import type { RowValues } from './row-values.ts';
import type { LakeClock } from '../cells/zone.ts';

/** Rows that are days. */
export class DayRows {
	readonly #clock: LakeClock;
	readonly #lastDay: IsoDate | null;
	readonly #ledger = new Ledger(7);
	#pending = new Map<number, ObservedDay>();

	constructor(clock: LakeClock, latest?: Latest) {
		this.#clock = clock;
		this.#lastDay = latest?.on ?? null;
	}

	/** A day that has not begun. */
	isAhead(stamp: Stamp): boolean {
		return this.#lastDay !== null && isoDate(dayOfStamp(stamp, this.#clock)) > this.#lastDay;
	}

	get pending(): number {
		return this.#pending.size;
	}

	get isFull(): boolean {
		return this.#ledger.isFull;
	}

	take(stamp: Stamp, line: number, values: RowValues): RowProblem | null {
		const day = dayOfStamp(stamp, this.#clock);
		const { air, min, max, precipitation, snowfall, landSnow, wind } = values;
		const row = [air, min, max, precipitation, snowfall, landSnow, wind];
		const entry = this.#ledger.put(day, line, row);
		this.#pending.delete(day);
		this.#pending.set(day, toDay(day, entry.values));
		return duplicateOf(entry, line, 'day');
	}

	finish(): RowProblem | null {
		return null;
	}

	drain(): ObservedDay[] {
		const days = [...this.#pending.values()];
		this.#pending = new Map();
		return days;
	}
}

function toDay(day: number, values: readonly (number | null)[]): ObservedDay {
	const [air = null, min = null, max = null, precipitation = null, snowfall = null] = values;
	return {
		on: isoDate(day),
		air_degC: air,
		min_degC: min,
		max_degC: max,
		freezing_degCd: null,
		thawing_degCd: null,
		aboveFreezing_h: null,
		precipitation_kg_m2: precipitation,
		snowfall_kg_m2: snowfall,
		landSnow_m: values[5] ?? null,
		wind_m_s: values[6] ?? null
	};
}
