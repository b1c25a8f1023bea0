import { z } from 'zod';
import type { LoadCase } from '#lib/model/load-case.ts';
import { chartUse } from '#lib/server/services/charts.ts';
import type { ListedLoad } from '#lib/server/services/shown-loads.ts';

const orNull = z.number().nullable();

const loadFacts = {
	id: z.string(),
	name: z.string(),
	mass_kg: z.number(),
	use: chartUse.nullable(),
	parked_h: z.number(),
	wetCracks: z.union([z.literal(0), z.literal(1), z.literal(2)]),
	current: z.boolean(),
	group: z.boolean(),
	trailer: z.object({ mass_kg: z.number(), apart_m: orNull }).nullable(),
	count: z.int(),
	spacing_m: orNull
};

export const load = z.object(loadFacts).meta({ id: 'Load' }) satisfies z.ZodType<LoadCase>;

export const listedLoad = z
	.object({ ...loadFacts, isStandard: z.boolean(), isShown: z.boolean() })
	.meta({ id: 'ListedLoad' }) satisfies z.ZodType<ListedLoad>;
