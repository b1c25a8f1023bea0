import type { IsoDate } from './calendar.ts';
import { total_m } from './column.ts';
import type { SeasonDay } from './season.ts';

/** What the warm-spell rules look at on a day. */
export type SpellDay = Pick<
	SeasonDay,
	'on' | 'air_degC' | 'freezing_degCd' | 'aboveFreezing_h' | 'sun_W_m2' | 'column'
>;

/** Hours above freezing in the last 24 that double the requirement. Minnesota DNR 2013 [R2]. */
export const DOUBLING_h = 6;
/** Hours above freezing that close the site. Minnesota DNR 2013 [R2], [TM5852] [R]. */
export const WITHHOLDING_h = 24;

/** What warm hours do: nothing, double the requirement, or withhold the status. */
export type WarmState = 'none' | 'doubled' | 'withheld';

/**
 * What two days running call for. Where each has only a count of hours, a run across midnight is not
 * excluded, so the counts are added; the sine of a daily record has its warmth about noon.
 */
export function warmthOf(days: readonly SpellDay[], hasHours: (on: IsoDate) => boolean): WarmState {
	const hours = days.map((day) => day.aboveFreezing_h ?? 0);
	const sum_h = hours.reduce((sum, each) => sum + each, 0);
	const isMeanWarm = days.some(
		(day) => !hasHours(day.on) && day.air_degC !== null && day.air_degC > 0
	);
	if (isMeanWarm || sum_h >= WITHHOLDING_h) return 'withheld';
	const within_h = days.every((day) => hasHours(day.on)) ? sum_h : Math.max(0, ...hours);
	return within_h >= DOUBLING_h ? 'doubled' : 'none';
}

/** True while there is anything to melt. */
export function hasIce(day: SpellDay): boolean {
	return total_m(day.column) > 0 || day.column.slush_m > 0;
}
