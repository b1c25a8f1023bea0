import { addDays, daysBetween, type IsoDate } from './calendar.ts';
import { OPEN_WATER } from './column.ts';
import { layersOf, type Layer, type Layered } from './doubt.ts';
import type { SeasonDay } from './season.ts';
import type { SiteWinter } from './site-winter.ts';

/** The days a lake may have frozen over. */
export interface FreezeUpSpan {
	first: IsoDate;
	middle: IsoDate;
	last: IsoDate;
}

/** Standard deviation of a value anywhere between two limits, as a share of their distance. */
const UNIFORM = 1 / Math.sqrt(12);

/** First, middle and last day that freeze-up may have been; `null` when none is recorded. */
export function freezeUpSpan(record: SiteWinter): FreezeUpSpan | null {
	const first = record.freezeUpOn;
	if (first === null) return null;
	const last = record.freezeUpBy !== null && record.freezeUpBy > first ? record.freezeUpBy : first;
	return { first, middle: addDays(first, Math.floor(daysBetween(first, last) / 2)), last };
}

/**
 * What an uncertain day of freeze-up adds to the doubt of each layer, by day.
 *
 *   σ = (largest - smallest)/√12 over the seasons from the first, middle and last day
 *
 * The estimate itself is that of the middle day.
 */
export function freezeUpDoubt(
	span: FreezeUpSpan,
	middle: readonly SeasonDay[],
	seasonFrom: (on: IsoDate) => readonly SeasonDay[]
): Map<IsoDate, Layered<number>> {
	if (span.first === span.last) return new Map();
	const early = byDay(seasonFrom(span.first));
	const late = byDay(seasonFrom(span.last));
	return new Map(
		middle.map((day) => {
			const columns = [early.get(day.on) ?? OPEN_WATER, day.column, late.get(day.on) ?? OPEN_WATER];
			return [day.on, spread(columns.map(layersOf))];
		})
	);
}

function byDay(days: readonly SeasonDay[]): Map<IsoDate, SeasonDay['column']> {
	return new Map(days.map((day) => [day.on, day.column]));
}

function spread(columns: readonly Layered<number>[]): Layered<number> {
	const of = (layer: Layer): number => {
		const heights = columns.map((column) => column[layer]);
		return (Math.max(...heights) - Math.min(...heights)) * UNIFORM;
	};
	return {
		clear: of('clear'),
		white: of('white'),
		snow: of('snow'),
		slush: of('slush'),
		total: of('total'),
		effective: of('effective')
	};
}
