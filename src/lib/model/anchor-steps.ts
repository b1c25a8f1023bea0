import { addDays, type IsoDate } from './calendar.ts';
import type { EstimatedDay } from './ensemble/estimate.ts';

/** Where readings moved the estimate, and by how much. */
export interface AnchorStep {
	on: IsoDate;
	readingIds: string[];
	/** Median whole thickness as it had been estimated without this day's readings. */
	before_m: number;
	after_m: number;
}

/** The days on which readings moved an estimate, in order. */
export function anchorSteps(days: readonly EstimatedDay[]): AnchorStep[] {
	return days.flatMap(({ on, before_m, quantiles, recalibrations }) => {
		const readingIds = recalibrations
			.filter(({ off }) => off !== null)
			.map((each) => each.readingId);
		if (before_m === null || readingIds.length === 0) return [];
		return [{ on, readingIds, before_m, after_m: quantiles.total_m.p50 ?? 0 }];
	});
}

/** Change of the estimated whole thickness over the last day, apart from what readings moved. */
export function growth_m_d(days: readonly EstimatedDay[], asOf: IsoDate): number | null {
	const today = days.find((day) => day.on === asOf);
	const before = days.find((day) => day.on === addDays(asOf, -1));
	if (!today || !before) return null;
	const now_m = today.before_m ?? today.quantiles.total_m.p50 ?? 0;
	return now_m - (before.quantiles.total_m.p50 ?? 0);
}
