import { daysBetween, type IsoDate } from '../calendar.ts';
import type { Forecast, ForecastDay } from '../forecast.ts';
import { isVehicle, type LoadCase } from '../load-case.ts';

/** What checks of places near a site need of its estimate. */
export interface SiteFacts {
	/** Today at the lake: what a check's age counts to. The estimate may end before it. */
	today: IsoDate;
	/** Lower bound of effective thickness at the thinnest of five spots; `null` where not estimated. */
	bound_m: number | null;
	/** Median effective thickness that the site is estimated to have lost since its most from a day on. */
	lostSince_m(on: IsoDate): number;
	/** Hours above freezing, by all that was observed, or ice that has gone altogether. */
	hasThawedSince(on: IsoDate): boolean;
	/** Days from `on` to today, which is not counted, of which no temperature is known. */
	gapDaysSince(on: IsoDate): number;
}

/** The facts of an answer; of no answer, that nothing is known. */
export function siteFacts(
	forecast: Forecast | null,
	loads: readonly LoadCase[],
	today: IsoDate
): SiteFacts {
	const last = [forecast?.asOf ?? today, today].toSorted()[0] ?? today;
	const days = (forecast?.days ?? []).filter((day) => day.on <= last);
	// What the last day itself has thawed stands in the sum of the next.
	const isSeen = days.at(-1)?.source === 'observed';
	const dayAfter = isSeen ? (forecast?.days.slice(days.length, days.length + 1) ?? []) : [];
	const since = (on: IsoDate) => days.filter((day) => day.on >= on);
	return {
		today,
		bound_m: forecast === null ? null : vehicleBound_m(forecast, loads),
		lostSince_m: (on) => {
			const all = since(on).flatMap((day) => day.effective_m.p50 ?? []);
			return Math.max(0, ...all) - (all.at(-1) ?? 0);
		},
		hasThawedSince: (on) => {
			if ((forecast?.leaving?.warmLast_h ?? 0) > 0 || since(on).some(isOpen)) return true;
			const sums = [...since(on), ...dayAfter].flatMap((day) => day.tdd_degCd ?? []);
			// After open water the sum begins anew.
			return sums.some((sum) => sum !== sums[0]);
		},
		gapDaysSince: (on) => {
			const known = since(on).filter((day) => isTold(day) && day.on < today).length;
			return Math.max(0, daysBetween(on, today) - known);
		}
	};
}

function isOpen({ effective_m }: ForecastDay): boolean {
	return effective_m.p50 === 0;
}

/** Of a day's own weather; what past winters tell is none of it. */
function isTold({ source }: ForecastDay): boolean {
	return source === 'observed' || source === 'forecast';
}

/** All vehicles are held against one bound. */
function vehicleBound_m({ loads }: Forecast, cases: readonly LoadCase[]): number | null {
	const vehicles = new Set(cases.filter(isVehicle).map(({ id }) => id));
	return loads.find(({ id }) => vehicles.has(id))?.bound_m ?? null;
}
