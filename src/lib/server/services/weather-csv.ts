import { z } from 'zod';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import type { Context } from '../context.ts';
import { readWeatherDays } from '../storage/weather-days.ts';
import { joinChanged, joinedMeanwhile } from './joining.ts';
import { getLake } from './lakes.ts';

/** Corrections of what the columns of a weather file were taken for. */
export const columnsInput = z
	.array(
		z.strictObject({
			index: z.int().min(0).max(1000),
			header: z.string().default(''),
			role: z.enum([
				'time',
				'date',
				'clock',
				'air',
				'min',
				'max',
				'precipitation',
				'snowfall',
				'landSnow',
				'wind',
				'ignore'
			]),
			unit: z.string().nullable().default(null),
			sample: z.array(z.string()).default([]),
			why: z.string().default('as corrected')
		})
	)
	.max(1000)
	.meta({ id: 'Columns' });

const HEADER = [
	'date',
	'tmean_c',
	'tmin_c',
	'tmax_c',
	'precip_mm',
	'snowfall_we_mm',
	'snow_depth_cm'
];

/** The stored days, both ends included, all origins joined. @throws LakeNotFound */
export async function listWeather(
	ctx: Context,
	lakeId: string,
	from: IsoDate = '0000-01-01',
	to: IsoDate = '9999-12-31'
): Promise<WeatherDay[]> {
	await getLake(ctx, lakeId);
	const meanwhile = await joinedMeanwhile(ctx, lakeId, from, to);
	if (meanwhile) return meanwhile.map((day) => ({ source: 'observed', ...day }));
	await joinChanged(ctx, lakeId);
	return readWeatherDays(ctx.db, lakeId, from, to);
}

/** Days as a table that can be imported again. */
export function weatherToCsv(days: readonly WeatherDay[]): string {
	const rows = days.map((day) => [
		day.on,
		day.air_degC,
		day.min_degC,
		day.max_degC,
		day.precipitation_kg_m2,
		day.snowfall_kg_m2,
		day.landSnow_m === null ? null : day.landSnow_m * 100
	]);
	return [HEADER, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: string | number | null): string {
	return typeof value === 'number' ? String(Number(value.toFixed(3))) : (value ?? '');
}
