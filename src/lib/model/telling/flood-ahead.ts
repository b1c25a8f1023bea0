import type { IsoDate } from '../calendar.ts';
import type { Forecast, ForecastDay } from '../forecast.ts';
import { daysAhead } from './days-ahead.ts';

/** New slush in half of the cases from which a flood is told. Our choice: less wets no boot. */
const NEW_SLUSH_m = 0.01;

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
 * Both, since the snow settles while it falls, and since slush freezes as it forms.
 */
export function floodAhead(
	forecast: Forecast,
	floodsWith_m: number | null,
	today: IsoDate
): FloodAhead | null {
	const now = forecast.days.find(({ on }) => on === forecast.asOf);
	if (!now) return null;
	const first = daysAhead(forecast, today).find(
		(day) =>
			rise_m(now, day, 'slush_m') >= NEW_SLUSH_m ||
			(floodsWith_m !== null && hasIce(now) && rise_m(now, day, 'snow_m') > floodsWith_m)
	);
	return first ? { from: first.on, floodsWith_m } : null;
}

function rise_m(now: ForecastDay, day: ForecastDay, layer: 'slush_m' | 'snow_m'): number {
	return (day[layer].p50 ?? 0) - (now[layer].p50 ?? 0);
}

/** Thinner ice floods under any snow, and nobody is on it: as for the caution of today. */
const FLOODABLE_m = 0.05;

function hasIce({ total_m }: ForecastDay): boolean {
	return (total_m.p50 ?? 0) >= FLOODABLE_m;
}
