import type { IsoDate } from '../calendar.ts';
import type { Forecast } from '../forecast.ts';
import { isVehicle, type LoadCase } from '../load-case.ts';

/** What checks of places near a site need of its estimate. */
export interface SiteFacts {
	asOf: IsoDate;
	/** Lower bound of effective thickness at the thinnest of five spots; `null` where not estimated. */
	bound_m: number | null;
	/** Median effective thickness that the site is estimated to have lost from a day's most to `asOf`. */
	lostSince_m(on: IsoDate): number;
	hasThawedSince(on: IsoDate): boolean;
	/** Days from `on` to `asOf` of which no temperature is known. */
	gapDaysSince(on: IsoDate): number;
}

/** The facts of an answer; of no answer, that nothing is known. */
export function siteFacts(
	forecast: Forecast | null,
	loads: readonly LoadCase[],
	asOf: IsoDate
): SiteFacts {
	const days = (forecast?.days ?? []).filter((day) => day.on <= asOf);
	const since = (on: IsoDate) => days.filter((day) => day.on >= on);
	const now = days.at(-1);
	return {
		asOf,
		bound_m: forecast === null ? null : vehicleBound_m(forecast, loads),
		lostSince_m: (on) => {
			const all = since(on).map((day) => day.effective_m.p50 ?? 0);
			return Math.max(0, ...all) - (all.at(-1) ?? 0);
		},
		hasThawedSince: (on) => {
			const then = since(on)[0];
			return (now?.tdd_degCd ?? 0) > (then?.tdd_degCd ?? 0);
		},
		gapDaysSince: (on) =>
			now === undefined || since(on)[0]?.on !== on
				? 1
				: since(on).filter((day) => day.source === 'gap' && day.on < asOf).length
	};
}

/** All vehicles are held against one bound. */
function vehicleBound_m({ loads }: Forecast, cases: readonly LoadCase[]): number | null {
	const vehicles = new Set(cases.filter(isVehicle).map(({ id }) => id));
	return loads.find(({ id }) => vehicles.has(id))?.bound_m ?? null;
}
