import { addDays, type IsoDate } from './calendar.ts';
import type { ForecastDay, Quantiles } from './forecast.ts';
import type { SeasonDay } from './season.ts';
import type { SiteEstimate } from './site-estimate.ts';

const UNKNOWN: Quantiles = { p05: null, p10: null, p50: null, p90: null, p95: null };

/** What is told of the air on a day. */
type Air = Pick<ForecastDay, 'air_degC' | 'fdd_degCd' | 'tdd_degCd'>;

/**
 * The answer's days from `from` to `until`: the quantiles of the ensemble, and past what is estimated
 * days without any.
 *
 * Air and degree-days are those of the season; of days to come the mean over what may come.
 */
export function forecastDays(
	season: readonly SeasonDay[],
	estimate: SiteEstimate,
	from: IsoDate,
	until: IsoDate
): ForecastDay[] {
	const known = new Map(season.map((day) => [day.on, day]));
	const days: ForecastDay[] = [];
	let fdd_degCd: number | null = 0;
	let tdd_degCd: number | null = 0;
	for (let on = from; on <= until; on = addDays(on, 1)) {
		const day = known.get(on);
		const mean = estimate.future.get(on);
		fdd_degCd = day?.fdd_degCd ?? fdd_degCd;
		tdd_degCd = day?.tdd_degCd ?? tdd_degCd;
		const isTold = estimate.days.has(on) && (day !== undefined || mean !== undefined);
		const air_degC = mean?.air_degC ?? day?.air_degC ?? null;
		days.push(
			isTold ? told(on, { air_degC, fdd_degCd, tdd_degCd }, estimate, day) : untold(on, day)
		);
		fdd_degCd += mean?.freezing_degCd ?? 0;
		tdd_degCd += mean?.thawing_degCd ?? 0;
	}
	return days;
}

function told(
	on: IsoDate,
	air: Air,
	estimate: SiteEstimate,
	day: SeasonDay | undefined
): ForecastDay {
	const estimated = estimate.days.get(on);
	if (estimated === undefined) return untold(on, day);
	const isKnown = !estimate.future.has(on);
	return {
		on,
		source: isKnown && day ? day.source : estimated.source,
		...air,
		...estimated.quantiles,
		bound: { total_m: estimated.bound.total_m, effective_m: estimated.bound.spot_m }
	};
}

function untold(on: IsoDate, day: SeasonDay | undefined): ForecastDay {
	return {
		on,
		source: 'gap',
		air_degC: day?.air_degC ?? null,
		fdd_degCd: day?.fdd_degCd ?? null,
		tdd_degCd: day?.tdd_degCd ?? null,
		clear_m: UNKNOWN,
		white_m: UNKNOWN,
		snow_m: UNKNOWN,
		slush_m: UNKNOWN,
		total_m: UNKNOWN,
		effective_m: UNKNOWN,
		bound: null
	};
}
