import { addDays, daysBetween, type IsoDate } from '../calendar.ts';
import { meanAir_degC } from '../degree-days.ts';
import type { WeatherDay } from '../weather.ts';
import { LONGEST_LEAD_d } from './forecast-error.ts';

/** A day that is not known yet. */
export interface FutureDay {
	on: IsoDate;
	/** Days after {@link Future.before}: 1 for the next. */
	lead_d: number;
	/** Days that a forecast of it looks ahead, the day it was issued being the first. */
	forecastLead_d: number;
	/** What is forecast for it, with its temperature; `null` where climate has to say. */
	forecast: WeatherDay | null;
}

export interface Future {
	/** The day before the first one not known. */
	before: IsoDate;
	/** What was observed on it. */
	beforeAir_degC: number | null;
	days: FutureDay[];
}

/**
 * The days to `until` that a scenario has to tell: those after `asOf`, and those up to it that were
 * forecast and not yet observed. A day up to `asOf` without either stays a gap, which makes no ice.
 *
 * A forecast counts from the day it was issued; where that is not known, from its first day not
 * observed, at the latest from the day after `asOf`.
 */
export function futureDays(
	known: readonly WeatherDay[],
	asOf: IsoDate,
	until: IsoDate,
	issuedOn: IsoDate | null = null
): Future {
	const observed = known.filter((day) => day.source === 'observed' && day.on <= asOf);
	const lastOn = observed.at(-1)?.on ?? '';
	const forecast = known.filter(
		(day) => day.source === 'forecast' && day.on > lastOn && meanAir_degC(day) !== null
	);
	const dayAfter = addDays(asOf, 1);
	const firstForecastOn = forecast[0]?.on ?? dayAfter;
	const from = firstForecastOn < dayAfter ? firstForecastOn : dayAfter;
	const before = addDays(from, -1);
	const byDay = new Map(forecast.map((day) => [day.on, day]));
	const length = Math.max(0, daysBetween(before, until));
	const days = Array.from({ length }, (_, index): FutureDay => {
		const on = addDays(from, index);
		const forecastLead_d =
			issuedOn === null ? index + 1 : Math.max(1, daysBetween(issuedOn, on) + 1);
		const ahead = forecastLead_d <= LONGEST_LEAD_d ? (byDay.get(on) ?? null) : null;
		return { on, lead_d: index + 1, forecastLead_d, forecast: ahead };
	});
	const last = observed.findLast((day) => day.on === before);
	return {
		before,
		beforeAir_degC: last === undefined ? null : meanAir_degC(last),
		days: days.filter(({ on, forecast: ahead }) => on > asOf || ahead !== null)
	};
}
