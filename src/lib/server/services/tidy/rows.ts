import { z } from 'zod';
import { isIsoDate, isWinterId } from '#lib/model/calendar.ts';

const text = z.string().trim();

const optionalNumber = text.optional().transform((cell, context) => {
	if (cell === undefined || cell === '') return null;
	const value = Number(cell);
	if (Number.isFinite(value)) return value;
	context.addIssue(`"${cell}" is not a number; leave the cell empty where nothing was measured`);
	return z.NEVER;
});

const requiredNumber = optionalNumber.transform((value, context) => {
	if (value !== null) return value;
	context.addIssue('a number is needed here');
	return z.NEVER;
});

const day = text.refine(isIsoDate, 'a day is written YYYY-MM-DD');

const optionalDay = text
	.optional()
	.transform((cell) => (cell ? cell : null))
	.refine((cell) => cell === null || isIsoDate(cell), 'a day is written YYYY-MM-DD');

export const lakeRow = z.object({
	dataset: text.min(1, 'a dataset is needed here'),
	lake: text.min(1, 'a lake is needed here'),
	lat: requiredNumber,
	lon: requiredNumber,
	area_km2: optionalNumber,
	mean_depth_m: optionalNumber,
	elevation_m: optionalNumber,
	water: text
		.optional()
		.transform((cell) => (cell ? cell : 'lake'))
		.pipe(z.enum(['lake', 'river', 'reservoir']))
});

export const weatherRow = z.object({
	date: day,
	tmean_c: optionalNumber,
	tmin_c: optionalNumber,
	tmax_c: optionalNumber,
	precip_mm: optionalNumber,
	snowfall_cm: optionalNumber,
	snowfall_we_mm: optionalNumber,
	snow_depth_cm: optionalNumber
});

export const iceRow = z.object({
	lake: text.min(1, 'a lake is needed here'),
	date: day,
	total_cm: optionalNumber,
	clear_cm: optionalNumber,
	white_cm: optionalNumber,
	snow_cm: optionalNumber,
	qc: text.optional().transform((cell) => cell ?? '')
});

export const freezeUpRow = z.object({
	lake: text.min(1, 'a lake is needed here'),
	winter: text.refine(isWinterId, 'a winter is written like 1995-96'),
	freeze_up_date: optionalDay,
	ice_out_date: optionalDay,
	notes: text.optional().transform((cell) => cell ?? '')
});

export type LakeRow = z.infer<typeof lakeRow>;
export type WeatherRow = z.infer<typeof weatherRow>;
export type IceRow = z.infer<typeof iceRow>;
export type FreezeUpRow = z.infer<typeof freezeUpRow>;
