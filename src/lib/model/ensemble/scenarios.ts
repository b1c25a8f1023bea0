import type { IsoDate } from '../calendar.ts';
import { meanAir_degC } from '../degree-days.ts';
import type { LakeFacts } from '../lake.ts';
import type { WeatherDay } from '../weather.ts';
import { climateDraws, type ClimateDraw } from './climate-draws.ts';
import { drawForecastErrors, KEPT_OVERNIGHT, type ForecastErrors } from './forecast-error.ts';
import { futureDays, type Future } from './future-days.ts';
import { seededRandom } from './random.ts';
import { scaleFall, shiftDay } from './shifted-day.ts';

/** One possible future: sorted, complete days with source `forecast` or `climate`. */
export interface ScenarioWeather {
	days: readonly WeatherDay[];
	/** Where it goes on after the forecast: `past winter 2019-20` or `usual climate`. */
	from: string;
}

export interface ScenarioInput {
	lake: LakeFacts;
	/** Observed days, and the forecast issued by `asOf`. Sorted, each day once. */
	known: readonly WeatherDay[];
	/** All stored observed days before `asOf`, earlier winters included. Sorted, each day once. */
	past: readonly WeatherDay[];
	asOf: IsoDate;
	until: IsoDate;
	/** The day on which the forecast was issued, where it is known. */
	issuedOn?: IsoDate | null;
	count: number;
	seed: number;
}

/**
 * Possible futures of a lake's weather: the forecast with its error for up to ten days, then a past
 * winter as a whole, or the usual climate. The same input gives the same answer.
 *
 *   T = forecast + error,  and after it  T = T_climate + a 0.7^d
 *
 * `a` is how far the last known or forecast day lies off the climate of that day: it fades, so that
 * no future begins with a jump. Past winters keep their order of days, and so the length of their
 * cold spells.
 */
export function scenarios(input: ScenarioInput): ScenarioWeather[] {
	const { lake, known, past, asOf, until, issuedOn = null, count, seed } = input;
	const future = futureDays(known, asOf, until, issuedOn);
	const random = seededRandom(seed);
	const errors = drawForecastErrors(count, random);
	const draws = climateDraws({
		lake,
		observed: observedBy(asOf, [...past, ...known]),
		from: future.before,
		length: 1 + (future.days.at(-1)?.lead_d ?? 0),
		count,
		random
	});
	return draws.map((climate, index) => ({
		days: joined(future, climate, errors, index, lake.latitude),
		from: climate.name
	}));
}

/** Each day once, though it be in what is past and in what is known. */
function observedBy(asOf: IsoDate, days: readonly WeatherDay[]): WeatherDay[] {
	const observed = days.filter((day) => day.source === 'observed' && day.on <= asOf);
	return [...new Map(observed.map((day) => [day.on, day])).values()];
}

function joined(
	future: Future,
	climate: ClimateDraw,
	errors: ForecastErrors,
	index: number,
	latitude: number
): WeatherDay[] {
	const usual = (lead_d: number): number => airOf(climate.days[lead_d]) + climate.offset_K;
	let anomaly_K = future.beforeAir_degC === null ? 0 : future.beforeAir_degC - usual(0);
	let wasClimate = false;
	return future.days.map(({ on, lead_d, forecastLead_d, forecast }) => {
		if (forecast !== null) {
			const day = withError(forecast, errors, forecastLead_d, index, latitude);
			anomaly_K = airOf(day) - usual(lead_d);
			wasClimate = false;
			return day;
		}
		anomaly_K *= KEPT_OVERNIGHT;
		const day = climateDay(climate.days[lead_d], on, climate.offset_K + anomaly_K, latitude);
		// The depth of another winter's snow is no rise from the day before it was joined to.
		const landSnow_m = wasClimate ? day.landSnow_m : null;
		wasClimate = true;
		return { ...day, landSnow_m };
	});
}

function airOf(day: WeatherDay | undefined): number {
	return (day && meanAir_degC(day)) ?? 0;
}

function withError(
	forecast: WeatherDay,
	errors: ForecastErrors,
	lead_d: number,
	index: number,
	latitude: number
): WeatherDay {
	const error_K = errors.air_K[lead_d - 1]?.[index] ?? 0;
	const factor = errors.fallFactor[lead_d - 1]?.[index] ?? 1;
	const air_degC = meanAir_degC(forecast);
	return scaleFall(shiftDay({ ...forecast, air_degC }, error_K, latitude), factor);
}

function climateDay(
	day: WeatherDay | undefined,
	on: IsoDate,
	shift_K: number,
	latitude: number
): WeatherDay {
	if (day === undefined) throw new RangeError(`climate ends before ${on}`);
	return { ...shiftDay(day, shift_K, latitude), on, source: 'climate' };
}
