import { addDays, dayOfYear, daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import { seededRandom, normalQuantile } from '#lib/model/ensemble/random.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import { weatherDay } from './weather-day.ts';

/** Invented daily weather: a yearly cycle, weather that lasts some days, now and then snow or rain. */
export function inventedWeather(from: IsoDate, to: IsoDate, seed = 1): WeatherDay[] {
	const random = seededRandom(seed);
	let anomaly_K = 0;
	return Array.from({ length: daysBetween(from, to) + 1 }, (_, index) => {
		const on = addDays(from, index);
		anomaly_K = 0.8 * anomaly_K + 3 * normalQuantile(random());
		const cycle_degC = 4 - 14 * Math.cos((2 * Math.PI * (dayOfYear(on) - 20)) / 365.25);
		return weatherDay(on, {
			air_degC: cycle_degC + anomaly_K,
			precipitation_kg_m2: random() < 0.4 ? 4 * random() : 0
		});
	});
}

export function airOf(day: WeatherDay | undefined): number {
	if (day === undefined || day.air_degC === null) throw new Error('no temperature on this day');
	return day.air_degC;
}

export function meanOf(values: readonly number[]): number {
	return values.reduce((sum, value) => sum + value, 0) / values.length;
}

export function spreadOf(values: readonly number[]): number {
	const mean = meanOf(values);
	return Math.sqrt(meanOf(values.map((value) => (value - mean) ** 2)));
}

/** Correlation of neighbours in a row of numbers. */
export function lagCorrelation(values: readonly number[]): number {
	const mean = meanOf(values);
	const products = values.slice(1).map((value, i) => (value - mean) * ((values[i] ?? mean) - mean));
	return products.reduce((sum, each) => sum + each, 0) / (values.length * spreadOf(values) ** 2);
}
