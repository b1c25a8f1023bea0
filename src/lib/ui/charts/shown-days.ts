import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { Forecast } from '#lib/model/forecast.ts';

/** Days shown past the one by which nine in ten have opened. */
const AFTER_ICE_d = 7;

/** The forecast without its last days that say nothing: past what is estimated, and past the ice. */
export function shownDays(forecast: Forecast): Forecast {
	const last = lastShown(forecast);
	return { ...forecast, days: forecast.days.filter(({ on }) => on <= last) };
}

/** The last day that is estimated; `null` without any. */
export function lastEstimated({ days }: Pick<Forecast, 'days'>): IsoDate | null {
	return days.findLast(({ total_m }) => total_m.p50 !== null)?.on ?? null;
}

function lastShown(forecast: Forecast): IsoDate {
	const { asOf, iceOut } = forecast;
	const estimated = lastEstimated(forecast) ?? asOf;
	const open = iceOut?.p90 ? addDays(iceOut.p90, AFTER_ICE_d) : estimated;
	const ends = open < estimated ? open : estimated;
	return ends > asOf ? ends : asOf;
}
