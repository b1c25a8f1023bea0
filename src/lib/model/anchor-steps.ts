import { addDays, type IsoDate } from './calendar.ts';
import { total_m } from './column.ts';
import type { Reading } from './reading.ts';
import type { SeasonDay } from './season.ts';

/** A reading this far off, both in length and in proportion, is worth a second look. Our choice. */
const FAR_m = 0.1;
const FAR_FRACTION = 0.5;

/** Where readings moved the estimate, and by how much. */
export interface AnchorStep {
	on: IsoDate;
	readingIds: string[];
	/** Whole thickness as it had been estimated without this day's readings. */
	before_m: number;
	after_m: number;
}

/** The days on which readings re-anchored a season, in order. */
export function anchorSteps(
	season: readonly SeasonDay[],
	readings: readonly Reading[],
	seasonWith: (readings: readonly Reading[], until: IsoDate) => readonly SeasonDay[]
): AnchorStep[] {
	return season
		.filter((day) => day.anchoredBy.length > 0)
		.map((day) => {
			const earlier = readings.filter((reading) => reading.on < day.on);
			const without = seasonWith(earlier, day.on).at(-1);
			return {
				on: day.on,
				readingIds: [...day.anchoredBy],
				before_m: without ? total_m(without.column) : 0,
				after_m: total_m(day.column)
			};
		});
}

/** Change of the estimated whole thickness over the last day, apart from what readings moved. */
export function growth_m_d(
	season: readonly SeasonDay[],
	asOf: IsoDate,
	anchors: readonly AnchorStep[]
): number | null {
	const today = season.find((day) => day.on === asOf);
	const before = season.find((day) => day.on === addDays(asOf, -1));
	if (!today || !before) return null;
	const now_m = anchors.find((step) => step.on === asOf)?.before_m ?? total_m(today.column);
	return now_m - total_m(before.column);
}

/** Readings that moved the estimate by more than 10 cm and half of it. */
export function farReadings(anchors: readonly AnchorStep[]): string[] {
	return anchors
		.filter(({ before_m, after_m }) => {
			const off_m = Math.abs(after_m - before_m);
			return off_m > FAR_m && off_m > FAR_FRACTION * before_m;
		})
		.flatMap((step) => step.readingIds);
}
