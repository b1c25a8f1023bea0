import { z } from 'zod';
import { isIsoDate } from '#lib/model/calendar.ts';
import { freezeUpRow, iceRow, lakeRow, weatherRow } from './rows.ts';

/** The tables of the tidy winters folder with the columns that are ours: other readers ignore them. */

const text = z
	.string()
	.trim()
	.optional()
	.transform((cell) => cell || null);

const day = text.refine((cell) => cell === null || isIsoDate(cell), 'a day is written YYYY-MM-DD');

/** An empty cell, or a number between two ends. */
function between(low: number, high: number) {
	return text.transform((cell, context) => {
		if (cell === null) return null;
		const value = Number(cell);
		if (Number.isFinite(value) && value >= low && value <= high) return value;
		context.addIssue(`"${cell}" is not a number from ${low} to ${high}; empty is not known`);
		return z.NEVER;
	});
}

export const ownLakeRow = lakeRow.extend({
	name: text,
	time_zone: text,
	charts: text,
	invented: text,
	today: day,
	site: text,
	site_name: text,
	site_kind: text,
	track_of: text
});

/** Ranges as they are stored. */
export const ownWeatherRow = weatherRow.extend({
	tmean_c: between(-95, 65),
	tmin_c: between(-95, 65),
	tmax_c: between(-95, 65),
	precip_mm: between(0, 12_500),
	snowfall_cm: between(0, 12_500),
	snowfall_we_mm: between(0, 12_500),
	snow_depth_cm: between(0, 2000),
	wind_m_s: between(0, 120),
	freezing_degcd: between(0, 100),
	thawing_degcd: between(0, 100),
	above_freezing_h: between(0, 24)
});

export const ownFreezeUpRow = freezeUpRow.extend({ freeze_up_from: day, freeze_up_by: day });

export const ownIceRow = iceRow;

export const eventRow = z.object({
	lake: z.string().trim().min(1, 'a lake is needed here'),
	winter: z.string().trim(),
	on: z.string().trim(),
	kind: z.string().trim(),
	refroze_on: day,
	snow_cm: between(0, 1000),
	density_kg_m3: between(50, 900),
	water_cm: between(0, 500)
});

export type OwnLakeRow = z.infer<typeof ownLakeRow>;
export type OwnWeatherRow = z.infer<typeof ownWeatherRow>;
export type OwnFreezeUpRow = z.infer<typeof ownFreezeUpRow>;
export type EventRow = z.infer<typeof eventRow>;
