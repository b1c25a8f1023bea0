import type { Context } from '../../src/lib/server/context.ts';
import { openContext } from '../../src/lib/server/context.ts';
import { createLake, newLake, type LakeRecord } from '../../src/lib/server/services/lakes.ts';

/** An empty database in memory and a clock that stands still. */
export async function freshContext(now = '2027-02-10T12:00:00Z'): Promise<Context> {
	const fresh = await openContext({ FROSTLEDGER_DATA: ':memory:' });
	return { ...fresh, now: () => new Date(now) };
}

/** An invented lake, in the middle of the North Atlantic. */
export function inventedLake(
	ctx: Context,
	facts: Record<string, unknown> = {}
): Promise<LakeRecord> {
	const lake = {
		name: 'Test Lake',
		latitude: 47.4,
		longitude: -38.2,
		area_km2: 2,
		meanDepth_m: 6,
		water: 'lake',
		timeZone: 'Etc/GMT+3'
	};
	return createLake(ctx, newLake.parse({ ...lake, ...facts }));
}
