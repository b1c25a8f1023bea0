import { z } from 'zod';
import type { ChartMinimum, LoadCase } from '#lib/model/load-case.ts';
import charts from '../../../../data/charts/minimums.json' with { type: 'json' };

export const chartUse = z.enum([
	'onFoot',
	'group',
	'snowmobile',
	'atv',
	'car',
	'lightTruck',
	'heavyTruck',
	'truckWithShelter'
]);

const chartMinimum = z.object({
	use: chartUse,
	set: z.enum(['strict', 'common']),
	thickness_m: z.number().positive().nullable(),
	body: z.string(),
	year: z.string(),
	governedBy: z.string(),
	confidence: z.string(),
	note: z.string()
});

const loadCase = z.object({
	id: z.string().min(1),
	name: z.string().min(1),
	mass_kg: z.number().positive(),
	use: chartUse.nullable(),
	parked_h: z.number().nonnegative(),
	wetCracks: z.union([z.literal(0), z.literal(1), z.literal(2)]),
	current: z.boolean(),
	group: z.boolean(),
	trailer: z.null(),
	count: z.literal(1),
	spacing_m: z.null()
});

const published = z
	.object({ minimums: z.array(chartMinimum), standardLoads: z.array(loadCase) })
	.parse(charts);

/** What published charts ask for; the rows with their sources are in `data/charts/minimums.json`. */
export const chartMinimums: readonly ChartMinimum[] = published.minimums;

/** Loads that every lake starts with. */
export const standardLoads: readonly LoadCase[] = published.standardLoads;
