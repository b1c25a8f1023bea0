import { anchor } from './anchoring.ts';
import { total_m } from './column.ts';
import { advanceDay } from './day.ts';
import { copyForcing, type DayForcing } from './forcing.ts';
import type { Parameters } from './parameters.ts';
import type { Reading } from './reading.ts';
import { applyEvent } from './site-events.ts';
import { openSite, pictureOf, type SiteIce } from './site-ice.ts';
import type { SiteEvent } from './site-winter.ts';
import { dayRates } from './step-rates.ts';

/** A site between two days of its winter: its ice and what is counted along. Changed in place. */
export interface RunningSite {
	ice: SiteIce;
	fdd_degCd: number;
	tdd_degCd: number;
	snowKnown: boolean;
	gapDays: number;
	daysSinceAnchor: number | null;
	peak_m: number;
	melt_m: number;
}

/** What a day's readings did. */
export interface DayRead {
	anchoredBy: readonly string[];
	doubtful: readonly string[];
}

export const NOTHING_READ: DayRead = { anchoredBy: [], doubtful: [] };

/** A site on the day it freezes over. */
export function freshSite(): RunningSite {
	return {
		ice: openSite(),
		fdd_degCd: 0,
		tdd_degCd: 0,
		snowKnown: true,
		gapDays: 0,
		daysSinceAnchor: null,
		peak_m: 0,
		melt_m: 0
	};
}

/** Lets the day's events act; true while the site is held open, when all starts anew. */
export function beginDay(
	site: RunningSite,
	events: readonly SiteEvent[],
	isHeldOpen: boolean,
	parameters: Parameters
): boolean {
	for (const event of events) applyEvent(site.ice, event, parameters);
	const isNewStart = isHeldOpen || events.some((event) => event.kind === 'reopened');
	if (isNewStart) Object.assign(site, freshSite());
	return isHeldOpen;
}

/** Puts the site where the day's readings say it is. */
export function readDay(site: RunningSite, readings: readonly Reading[]): DayRead {
	if (readings.length === 0) return NOTHING_READ;
	const result = anchor(pictureOf(site.ice), readings);
	if (result.anchoredBy.length > 0) {
		Object.assign(site.ice, result.column, { crust_m: 0 });
		site.gapDays = 0;
		site.daysSinceAnchor = 0;
		site.peak_m = total_m(result.column);
		site.melt_m = 0;
	}
	site.snowKnown ||= result.snowMeasured;
	return result;
}

/** Carries the site over the day and counts it. */
export function passDay(
	site: RunningSite,
	forcing: DayForcing,
	parameters: Parameters,
	steps: number
): void {
	const before_m = total_m(site.ice);
	const day = copyForcing(forcing); // of the make that an ensemble's days have
	advanceDay(site.ice, day, dayRates(day, parameters, steps), parameters);
	const after_m = total_m(site.ice);
	site.melt_m = after_m > site.peak_m ? 0 : site.melt_m + Math.max(0, before_m - after_m);
	site.peak_m = Math.max(site.peak_m, after_m);
	site.fdd_degCd += forcing.freezing_degCd;
	if (forcing.hasAir) site.tdd_degCd += forcing.thawing_degCd;
	site.snowKnown &&= forcing.hasSnow;
	if (!forcing.hasAir) site.gapDays++;
	if (site.daysSinceAnchor !== null) site.daysSinceAnchor++;
}
