import type { IsoDate } from './calendar.ts';
import { daysAhead } from './days-ahead.ts';
import type { ForecastDay } from './forecast.ts';

/** New slush in half of the cases from which a flood is told. Our choice: less wets no boot. */
const NEW_SLUSH_m = 0.01;

export type FloodDay = Pick<ForecastDay, 'on' | 'source' | 'slush_m' | 'snow_m' | 'total_m'>;

export interface FloodAhead {
	/** The first day with it. */
	from: IsoDate;
	/** Further snow that floods the sheet as it is today; `null` where not estimated. */
	floodsWith_m: number | null;
}

/**
 * The flood that the weather forecast brings: the first day to come on which the median slush is a
 * centimetre deeper than today, or the median snow deeper by what the sheet still floats. `null`
 * without one.
 *
 * Both, since the snow settles while it falls, and since slush freezes as it forms. It is the one rule
 * for what is told of a flood, on the page of coming off as in messages.
 */
export function floodAhead(
	{ days, asOf }: { days: readonly FloodDay[]; asOf: IsoDate },
	floodsWith_m: number | null,
	today: IsoDate
): FloodAhead | null {
	const now = days.find(({ on }) => on === asOf);
	if (!now) return null;
	const first = daysAhead(days, today).find(
		(day) =>
			rise_m(now, day, 'slush_m') >= NEW_SLUSH_m ||
			(floodsWith_m !== null && hasIce(now) && rise_m(now, day, 'snow_m') > floodsWith_m)
	);
	return first ? { from: first.on, floodsWith_m } : null;
}

function rise_m(now: FloodDay, day: FloodDay, layer: 'slush_m' | 'snow_m'): number {
	return (day[layer].p50 ?? 0) - (now[layer].p50 ?? 0);
}

/** Thinner ice floods under any snow, and nobody is on it. */
export const FLOODABLE_m = 0.05;

function hasIce({ total_m }: FloodDay): boolean {
	return (total_m.p50 ?? 0) >= FLOODABLE_m;
}
