import { existsSync, readFileSync } from 'node:fs';
import type { WeatherDay } from '#lib/model/weather.ts';
import { weatherDay } from './weather-day.ts';

/** Where measured winters may lie beside the project; nothing depends on them. */
const MEASURED_WINTERS = '../shared/winters';

export const hasMeasuredWinters = existsSync(MEASURED_WINTERS);

/** Days of a tidy weather file within a span; snowfall depth counts at 10:1. */
export function tidyWeather(dataset: string, from: string, to: string): WeatherDay[] {
	const [header = '', ...lines] = readFileSync(`${MEASURED_WINTERS}/${dataset}/weather.csv`, 'utf8')
		.trim()
		.split('\n');
	const names = header.split(',');
	return lines.flatMap((line) => {
		const cells = line.split(',');
		const cell = (name: string): number | null => {
			const text = cells[names.indexOf(name)];
			return text ? Number(text) : null;
		};
		const on = cells[0] ?? '';
		if (on < from || on > to) return [];
		return weatherDay(on, {
			air_degC: cell('tmean_c'),
			precipitation_kg_m2: cell('precip_mm'),
			snowfall_kg_m2: cell('snowfall_we_mm') ?? cell('snowfall_cm')
		});
	});
}
