import { addDays, type IsoDate } from './calendar.ts';
import { layersOf, type Layer } from './doubt.ts';
import type { ForecastDay, Quantiles } from './forecast.ts';
import { lowerBound_m } from './lower-bound.ts';
import type { DoubtedDay } from './site-doubt.ts';

const UNKNOWN: Quantiles = { p05: null, p10: null, p50: null, p90: null, p95: null };

/**
 * The answer's days: estimate and lower bound of each layer, and past what is known days without any.
 *
 * Before the ensemble p10 is the estimate less 1.28 σ, p50 the estimate, and the rest unknown.
 */
export function forecastDays(
	season: readonly DoubtedDay[],
	from: IsoDate,
	until: IsoDate
): ForecastDay[] {
	const days = season.filter(({ day }) => day.on <= until).map(knownDay);
	const last = season.at(-1)?.day.on;
	let on = last === undefined ? from : addDays(last, 1);
	for (; on <= until; on = addDays(on, 1)) days.push(unknownDay(on));
	return days;
}

function knownDay({ day, doubt }: DoubtedDay): ForecastDay {
	const height = layersOf(day.column);
	const of = (layer: Layer): Quantiles => {
		return { ...UNKNOWN, p10: lowerBound_m(height[layer], doubt[layer]), p50: height[layer] };
	};
	return {
		on: day.on,
		source: day.source,
		air_degC: day.air_degC,
		fdd_degCd: day.fdd_degCd,
		tdd_degCd: day.tdd_degCd,
		clear_m: of('clear'),
		white_m: of('white'),
		snow_m: of('snow'),
		slush_m: of('slush'),
		total_m: of('total'),
		effective_m: of('effective')
	};
}

function unknownDay(on: IsoDate): ForecastDay {
	return {
		on,
		source: 'gap',
		air_degC: null,
		fdd_degCd: null,
		tdd_degCd: null,
		clear_m: UNKNOWN,
		white_m: UNKNOWN,
		snow_m: UNKNOWN,
		slush_m: UNKNOWN,
		total_m: UNKNOWN,
		effective_m: UNKNOWN
	};
}
