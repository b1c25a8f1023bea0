import { sql } from 'kysely';
import { expect, test } from 'vitest';
import type { Context } from '../../../../src/lib/server/context.ts';
import { clearAway } from '../../../../src/lib/server/services/history/clear-away.ts';
import { undoDeletion } from '../../../../src/lib/server/services/history/undo.ts';
import { loadInput } from '../../../../src/lib/server/services/load-input.ts';
import {
	addLoad,
	deleteLoad,
	listOwnLoads
} from '../../../../src/lib/server/services/own-loads.ts';
import { routeInput } from '../../../../src/lib/server/services/places/route-input.ts';
import {
	addRoute,
	deleteRoute,
	getRoute,
	listRoutes
} from '../../../../src/lib/server/services/places/routes.ts';
import {
	addWeakSpot,
	deleteWeakSpot,
	weakSpotInput
} from '../../../../src/lib/server/services/places/weak-spots.ts';
import { readingInput } from '../../../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../../../src/lib/server/services/readings.ts';
import { newSite } from '../../../../src/lib/server/services/site-input.ts';
import {
	createSite,
	deleteSite,
	listDeletedSites,
	listSites,
	restoreSite
} from '../../../../src/lib/server/services/sites.ts';
import { freshContext, inventedLake } from '../../../support/fresh-context.ts';

const later = (ctx: Context, days: number): Context => ({
	...ctx,
	now: () => new Date(ctx.now().getTime() + days * 86_400_000)
});

async function lake() {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	const count = async (table: string) => {
		const { rows } = await sql<{
			n: number;
		}>`SELECT count(*) AS n FROM ${sql.table(table)}`.execute(ctx.db);
		return rows[0]?.n;
	};
	return { ctx, id, count };
}

async function spotOf(ctx: Context, id: string, name: string): Promise<string> {
	const made = await addWeakSpot(ctx, id, weakSpotInput.parse({ name, kind: 'spring' }));
	if (made.status !== 'stored') throw new Error(made.status);
	return made.spot.id;
}

async function routeOver(ctx: Context, id: string, name: string, spot: string): Promise<string> {
	const points = [{ name: 'Shore' }, { spot }];
	const made = await addRoute(ctx, id, routeInput.parse({ name, points }));
	if (made.status !== 'stored') throw new Error(made.status);
	return made.route.id;
}

test('a deleted load goes after 30 days, with what was set of it', async () => {
	const { ctx, id, count } = await lake();
	const own = loadInput.parse({ name: 'Shelter', mass_kg: 400 });
	const { id: gone } = await addLoad(ctx, id, own);
	const { id: kept } = await addLoad(ctx, id, own);
	for (const load_id of [gone, kept, 'snowmobile']) {
		await ctx.db.insertInto('hidden_load').values({ lake_id: id, load_id }).execute();
		await ctx.db.insertInto('load_lead').values({ lake_id: id, load_id, lead_d: 3 }).execute();
	}
	await deleteLoad(ctx, id, gone);
	await clearAway(later(ctx, 29));
	expect([await count('own_load'), await count('hidden_load')]).toEqual([2, 3]);
	await clearAway(later(ctx, 31));
	expect((await listOwnLoads(ctx, id)).map((load) => load.id)).toEqual([kept]);
	expect(await count('own_load')).toBe(1);
	for (const table of ['hidden_load', 'load_lead'] as const) {
		const rows = await ctx.db.selectFrom(table).select('load_id').orderBy('load_id').execute();
		expect(rows.map(({ load_id }) => load_id)).toEqual([kept, 'snowmobile'].toSorted());
	}
});

test('a deleted site goes after 30 days with its readings, and others stay', async () => {
	const { ctx, id, count } = await lake();
	const made = await createSite(ctx, id, newSite.parse({ name: 'Bay', kind: 'bay' }));
	if (made.status !== 'stored') throw new Error('refused');
	const reading = { on: '2027-01-10', kind: 'measured', holes: [{ total_m: 0.3 }] };
	for (const site of ['main', made.site.id]) {
		await addReadings(ctx, id, site, [readingInput.parse(reading)]);
	}
	await deleteSite(ctx, id, made.site.id);
	await clearAway(later(ctx, 29));
	expect(await listDeletedSites(ctx, id)).toHaveLength(1);
	expect(await count('reading')).toBe(2);
	await clearAway(later(ctx, 31));
	expect(await listDeletedSites(ctx, id)).toEqual([]);
	expect((await listSites(ctx, id)).map((site) => site.id)).toEqual(['main']);
	expect([await count('site'), await count('reading'), await count('hole')]).toEqual([1, 1, 1]);
	await expect(restoreSite(ctx, id, made.site.id)).rejects.toThrow('No site');
});

test('a deleted route and a deleted weak spot go after 30 days', async () => {
	const { ctx, id, count } = await lake();
	const [spot, other] = [await spotOf(ctx, id, 'Spring'), await spotOf(ctx, id, 'Reeds')];
	const route = await routeOver(ctx, id, 'To the island', spot);
	await deleteRoute(ctx, id, route);
	await deleteWeakSpot(ctx, id, spot);
	await clearAway(later(ctx, 29));
	expect([await count('route'), await count('route_point')]).toEqual([1, 2]);
	expect(await count('weak_spot')).toBe(2);
	await clearAway(later(ctx, 31));
	expect([await count('route'), await count('route_point')]).toEqual([0, 0]);
	const left = await ctx.db.selectFrom('weak_spot').select('id').execute();
	expect(left).toEqual([{ id: other }]);
	expect(await listRoutes(ctx, id)).toEqual([]);
});

test('a weak spot stays as the gap of a route that goes over it, and comes back no more', async () => {
	const { ctx, id, count } = await lake();
	const spot = await spotOf(ctx, id, 'Spring');
	const route = await routeOver(ctx, id, 'To the island', spot);
	await deleteWeakSpot(ctx, id, spot);
	await clearAway(later(ctx, 31));
	expect((await getRoute(ctx, id, route)).points[1]).toMatchObject({ isSpotDeleted: true });
	const deletion = { what: 'weak_spot', id: spot, site: null };
	await expect(undoDeletion(later(ctx, 31), id, deletion)).rejects.toThrow('No deletion');
	await deleteRoute(later(ctx, 31), id, route);
	await clearAway(later(ctx, 60));
	expect([await count('route'), await count('weak_spot')]).toEqual([1, 1]);
	await clearAway(later(ctx, 62));
	expect([await count('route'), await count('weak_spot')]).toEqual([0, 0]);
});
