import { isoDate } from '#lib/model/calendar.ts';
import type { DayValues } from '#lib/model/hours-to-days.ts';
import type { Decimal } from '../../cells/numbers.ts';
import { outsideOf, withoutNoise } from '../../cells/plausible.ts';
import type { ValueRole } from '../../cells/units.ts';
import type { Column } from './columns.ts';
import type { DayPlaces } from './day-places.ts';
import { totalOf } from './hours.ts';
import { valuesOf, type Samples } from './role-values.ts';
import type { Tally } from './tally.ts';

export interface DayReading {
	/** Where each day stands in the answer. */
	placesOf: (column: Column) => DayPlaces;
	decimal: Decimal;
	tally: Tally;
}

export type DayNumbers = Map<number, number>;
export type DayRoles = Partial<Record<ValueRole, DayNumbers>>;

/** The days of one role, by their number; a second column fills what the first leaves open. */
export function daysOfRole(
	columns: readonly Column[],
	reading: DayReading,
	samples: Samples
): DayNumbers {
	const days: DayNumbers = new Map();
	for (const column of columns) {
		const byDay = reading.placesOf(column);
		const values = valuesOf(column, [...byDay.values()], reading.decimal, reading.tally, samples);
		for (const [at, day] of [...byDay.keys()].entries()) {
			const value = physical(column.role, values[at] ?? null, day, reading.tally);
			if (value !== null && !days.has(day)) days.set(day, value);
		}
	}
	return days;
}

/** Mean and range may come from different readings, and are rounded. */
const RANGE_TOLERANCE_K = 0.6;

/** Days from the values of their roles, of which contradictory temperatures are dropped. */
export function daysOf(roles: DayRoles, isRainAlone: boolean, tally: Tally): DayValues[] {
	const numbers = new Set(Object.values(roles).flatMap((values) => [...values.keys()]));
	return [...numbers]
		.toSorted((a, b) => a - b)
		.map((day) => {
			const value = (role: ValueRole) => roles[role]?.get(day) ?? null;
			const fallen = value('precipitation');
			const snowfall = value('snowfall');
			return {
				on: isoDate(day),
				...temperatures(value('air'), value('min'), value('max'), isoDate(day), tally),
				freezing_degCd: null,
				thawing_degCd: null,
				aboveFreezing_h: null,
				precipitation_kg_m2: isRainAlone ? totalOf(fallen, snowfall, 'daily') : fallen,
				snowfall_kg_m2: snowfall,
				landSnow_m: value('landSnow'),
				wind_m_s: value('wind')
			};
		});
}

function temperatures(
	air_degC: number | null,
	min_degC: number | null,
	max_degC: number | null,
	on: string,
	tally: Tally
): Pick<DayValues, 'air_degC' | 'min_degC' | 'max_degC'> {
	const low = min_degC ?? -Infinity;
	const high = max_degC ?? Infinity;
	const isInside =
		air_degC === null ||
		(air_degC >= low - RANGE_TOLERANCE_K && air_degC <= high + RANGE_TOLERANCE_K);
	if (low <= high && isInside) return { air_degC, min_degC, max_degC };
	const shown = [min_degC, air_degC, max_degC].map((value) => value ?? '–').join(', ');
	tally.add('contradictions', null, `${shown} °C as lowest, mean and highest`, on);
	return { air_degC: null, min_degC: null, max_degC: null };
}

function physical(role: ValueRole, read: number | null, day: number, tally: Tally): number | null {
	if (read === null) return null;
	const value = withoutNoise(role, read);
	const range = outsideOf(role, value, 'daily');
	if (range === null) return value;
	const shown = Math.round(value * 100) / 100;
	tally.add('impossible', role, `${shown}, which is not ${range}`, isoDate(day));
	return null;
}
