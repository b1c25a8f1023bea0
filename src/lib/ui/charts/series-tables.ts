import { day, shortDay } from '../format/day.ts';
import { degreeDays, temperature } from '../format/degrees.ts';
import { depth, thickness } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import type { ReadingPoint } from './reading-points.ts';
import { weekly, type SeriesDay } from './series.ts';

/** A table that says what a picture shows. */
export interface SeriesTable {
	columns: string[];
	rows: { id: string; cells: string[] }[];
}

export function thicknessTable(days: readonly SeriesDay[], units: Units): SeriesTable {
	return {
		columns: ['Day', 'Estimate', 'Lower bound', 'Clear', 'White', 'Counts as, lower bound'],
		rows: weekly(days).map((each) => ({
			id: each.on,
			cells: [
				day(each.on),
				thickness(each.total_m, units),
				thickness(each.totalLower_m, units),
				thickness(each.clear_m, units),
				thickness(each.white_m, units),
				thickness(each.effectiveLower_m, units)
			]
		}))
	};
}

export function readingsTable(readings: readonly ReadingPoint[], units: Units): SeriesTable {
	return {
		columns: ['Day', 'Place', 'What was found'],
		rows: readings.map((reading, index) => ({
			id: `${reading.on} ${index}`,
			cells: [day(reading.on), reading.place ?? 'not named', found(reading, units)]
		}))
	};
}

export function weatherTable(days: readonly SeriesDay[], units: Units): SeriesTable {
	return {
		columns: ['Day', 'Air of the day before', 'Frost so far', 'Thaw so far', 'Snow on the ice'],
		rows: weekly(days.map((each, index) => ({ ...each, before: days[index - 1] }))).map((each) => ({
			id: each.on,
			cells: [
				shortDay(each.on),
				temperature(each.before?.air_degC ?? null, units),
				degreeDays(each.fdd_degCd, units),
				degreeDays(each.tdd_degCd, units),
				depth(each.snow_m, units)
			]
		}))
	};
}

function found({ kind, holes_m, secondHand }: ReadingPoint, units: Units): string {
	const what = foundIce(kind, holes_m, units);
	return secondHand ? `${what}; told by somebody else` : what;
}

function foundIce(kind: ReadingPoint['kind'], holes_m: readonly number[], units: Units): string {
	const holes = holes_m.map((hole_m) => thickness(hole_m, units)).join(', ');
	if (kind === 'wentThrough') return holes ? `went through at ${holes}` : 'went through';
	return kind === 'atLeast' ? `at least ${holes}, not drilled through` : holes;
}
