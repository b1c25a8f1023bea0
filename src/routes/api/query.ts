import { z } from 'zod';
import { WEAK_SPOT_KINDS } from '#lib/model/places/weak-spot.ts';
import { isoDate, winterId } from '#lib/server/services/fields.ts';
import { columnsInput } from '#lib/server/services/weather-csv.ts';
import { parseJson } from './body.ts';
import { invalid, Problem } from './problem.ts';

const site = z
	.string()
	.min(1)
	.max(80)
	.default('main')
	.meta({ description: 'A part of the lake with its own ice' });

export const noQuery = z.strictObject({});

export const historyQuery = z.strictObject({
	before: z.coerce.number().int().positive().exactOptional().meta({ description: 'A unit' })
});

export const siteQuery = z.strictObject({ site });

export const readingsQuery = z.strictObject({ site, winter: winterId.exactOptional() });

export const forecastQuery = z.strictObject({
	site,
	winter: winterId.exactOptional(),
	asOf: isoDate.exactOptional(),
	until: isoDate.exactOptional()
});

export const earlyIceQuery = forecastQuery.omit({ until: true });

export const weatherQuery = z.strictObject({
	from: isoDate.exactOptional(),
	to: isoDate.exactOptional()
});

const dryRun = z.enum(['0', '1', 'false', 'true']).default('0');

export const dryRunQuery = z.strictObject({ dryRun });

export const importQuery = z.strictObject({
	dryRun,
	columns: z
		.string()
		.transform((text) => parseJson(text, 'parameter columns'))
		.pipe(columnsInput)
		.exactOptional()
});

export const logQuery = z.strictObject({
	source: z.string().min(1).max(80).exactOptional(),
	lake: z.string().min(1).max(80).exactOptional(),
	onlyFaults: z.enum(['0', '1', 'false', 'true']).default('0'),
	limit: z.coerce.number().int().min(1).max(1000).default(100)
});

export const holesQuery = z.strictObject({
	vehicle: z.enum(['0', '1', 'false', 'true']).default('0')
});

export const gpxQuery = z.strictObject({
	waypointsAs: z
		.enum([...WEAK_SPOT_KINDS, 'route'])
		.default('route')
		.meta({ description: 'What waypoints become whose own type is no kind of weak spot' })
});

export const messagesQuery = z.strictObject({
	limit: z.coerce.number().int().min(1).max(1000).default(100)
});

/** The address's parameters as the schema has them; one it does not know is refused. @throws Problem */
export function readQuery<Schema extends z.ZodType>(url: URL, schema: Schema): z.output<Schema> {
	const names = [...url.searchParams.keys()];
	const twice = names.find((name, at) => names.indexOf(name) !== at);
	if (twice !== undefined) {
		const issues = [{ field: twice, message: 'is given more than once' }];
		throw new Problem(400, 'Bad Request', `The query gives ${twice} more than once`, { issues });
	}
	const parsed = schema.safeParse(Object.fromEntries(url.searchParams));
	if (!parsed.success) throw invalid('query', parsed.error);
	return parsed.data;
}
