import type { Context } from '#lib/server/context.ts';
import { lakeOrigins } from '#lib/server/services/sources/lake-origins.ts';
import { listSources } from '#lib/server/services/sources/sources.ts';
import { originItem } from './origin-item.ts';

/** The origins of a lake's weather in the order of trust, and the sources that it does not use yet. */
export async function originsOf(context: Context, lake: { id: string; timeZone: string }) {
	const origins = await lakeOrigins(context, lake.id);
	const around = { now: context.now(), timeZone: lake.timeZone };
	const used = new Set(origins.flatMap((each) => (each.kind === 'source' ? [each.source] : [])));
	const others = (await listSources(context)).filter(({ id }) => !used.has(id));
	return {
		origins: origins.map((origin) => originItem(origin, around)),
		others: others.map(({ id, name, source }) => ({
			id,
			name,
			wantsStation: JSON.stringify(source?.calls ?? []).includes('{station}')
		}))
	};
}
