import { expect, test } from 'vitest';
import { importWeather } from '../../../src/lib/server/services/import-weather.ts';
import { lakeView } from '../../../src/lib/server/services/lake-view.ts';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../../src/lib/server/services/readings.ts';
import * as sites from '../../../src/lib/server/services/sites.ts';
import { saveSiteWinter, winterInput } from '../../../src/lib/server/services/winters.ts';
import { drilledLake } from '../../support/drilled-lake.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { inPieces, winterCsv } from '../../support/winter-csv.ts';

const BAY = { name: 'North bay', kind: 'bay', parent: null } as const;
const TRACK = { name: 'The track', kind: 'track', parent: 'main' } as const;
const WINTER = '2026-27';

test('a site is made, renamed, deleted and brought back', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	const made = await sites.createSite(ctx, id, BAY);
	expect(made).toEqual({ status: 'stored', site: { id: 'north-bay', ...BAY } });
	await sites.updateSite(ctx, id, 'north-bay', { name: 'The bay' });
	const names = async () => (await sites.listSites(ctx, id)).map(({ name }) => name);
	expect(await names()).toEqual(['Main', 'The bay']);
	await sites.deleteSite(ctx, id, 'north-bay');
	expect(await names()).toEqual(['Main']);
	await expect(sites.getSite(ctx, id, 'north-bay')).rejects.toThrow(sites.SiteNotFound);
	expect(await sites.listDeletedSites(ctx, id)).toMatchObject([{ id: 'north-bay' }]);
	await sites.restoreSite(ctx, id, 'north-bay');
	expect(await names()).toEqual(['Main', 'The bay']);
	const again = await sites.createSite(ctx, id, BAY);
	expect(again).toMatchObject({ site: { id: expect.stringMatching(/^north-bay-\w{6}$/) } });
});

test.each([
	[{ ...BAY, name: ' main ' }, ['name']],
	[{ ...BAY, parent: 'main' }, ['parent']],
	[{ ...TRACK, name: 'Other', parent: null }, ['parent']],
	[{ ...TRACK, name: 'Other', parent: 'the-track' }, ['parent']],
	[{ ...TRACK, name: 'The track' }, ['name']]
])('%j beside a track is refused', async (site, fields) => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	await sites.createSite(ctx, id, TRACK);
	const outcome = await sites.createSite(ctx, id, site);
	expect(outcome).toMatchObject({ status: 'refused' });
	expect(outcome.status === 'refused' && outcome.issues.map(({ field }) => field)).toEqual(fields);
	expect(await sites.listSites(ctx, id)).toHaveLength(2);
});

test('the first site stays, and so does one that a track was made on', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	await sites.createSite(ctx, id, BAY);
	await sites.createSite(ctx, id, { ...TRACK, parent: 'north-bay' });
	for (const site of ['main', 'north-bay']) {
		expect(await sites.deleteSite(ctx, id, site)).toMatchObject({ status: 'refused' });
	}
	expect(
		await sites.updateSite(ctx, id, 'north-bay', { kind: 'track', parent: 'main' })
	).toMatchObject({ status: 'refused', issues: [{ field: 'kind' }] });
	await sites.deleteSite(ctx, id, 'the-track');
	expect(await sites.deleteSite(ctx, id, 'north-bay')).toMatchObject({ status: 'stored' });
	// What it was made on is not there any more.
	expect(await sites.restoreSite(ctx, id, 'the-track')).toMatchObject({ status: 'refused' });
});

/** The estimate of a site's last known day. */
async function estimateOf(ctx: Awaited<ReturnType<typeof freshContext>>, id: string, site: string) {
	const { outlook } = await lakeView(ctx, id, { site });
	const day = outlook?.forecast.days.at(-1);
	return { outlook, total_m: day?.total_m.p50 ?? NaN, snow_m: day?.snow_m.p50 ?? NaN };
}

test('a track is its parent’s ice until it is worked on, and grows faster once it is cleared', async () => {
	const { ctx, id } = await drilledLake();
	await sites.createSite(ctx, id, TRACK);
	const parent = await estimateOf(ctx, id, 'main');
	const unworked = await estimateOf(ctx, id, 'the-track');
	expect(unworked.outlook?.forecast.days).toEqual(parent.outlook?.forecast.days);
	expect(unworked.outlook?.forecast.loads).toEqual(parent.outlook?.forecast.loads);
	const events = [{ kind: 'cleared', on: '2026-12-28', snow_m: 0 }];
	const cleared = winterInput.parse({ freezeUpOn: null, events });
	await saveSiteWinter(ctx, id, 'the-track', { winter: WINTER, ...cleared });
	const worked = await estimateOf(ctx, id, 'the-track');
	expect(worked.total_m).toBeGreaterThan(parent.total_m + 0.02);
	expect(worked.snow_m).toBeLessThan(parent.snow_m);
	expect((await estimateOf(ctx, id, 'main')).total_m).toBe(parent.total_m);
});

test('no load counts as reached on a worked track by holes beside it', async () => {
	const ctx = await freshContext('2027-01-18T12:00:00Z');
	const { id } = await inventedLake(ctx);
	await importWeather(ctx, id, inPieces(winterCsv('2026-10-01', 110)));
	const record = winterInput.parse({ freezeUpOn: '2026-11-20' });
	await saveSiteWinter(ctx, id, 'main', { winter: WINTER, ...record });
	const holes = [0.4, 0.41, 0.42, 0.4, 0.4].map((clear_m) => ({
		clear_m,
		white_m: 0,
		snow_m: 0.02
	}));
	const reading = readingInput.parse({ on: '2027-01-16', kind: 'measured', holes, core: 'sound' });
	await addReadings(ctx, id, 'main', [reading]);
	await sites.createSite(ctx, id, TRACK);
	const onFoot = async (site: string) =>
		(await estimateOf(ctx, id, site)).outlook?.forecast.loads.find((load) => load.id === 'on-foot')
			?.status;
	expect(await onFoot('main')).toBe('reached');
	expect(await onFoot('the-track')).toBe('reached');
	const events = [{ kind: 'cleared', on: '2027-01-17', snow_m: 0 }];
	const cleared = winterInput.parse({ freezeUpOn: null, events });
	await saveSiteWinter(ctx, id, 'the-track', { winter: WINTER, ...cleared });
	expect(await onFoot('the-track')).toBe('expectedNotDrilled');
	await addReadings(ctx, id, 'the-track', [{ ...reading, on: '2027-01-18' }]);
	expect(await onFoot('main')).toBe('reached');
	expect(await onFoot('the-track')).toBe('reached');
});

test('a bay has a freeze-up of its own, a track none', async () => {
	const { ctx, id } = await drilledLake();
	await sites.createSite(ctx, id, BAY);
	await sites.createSite(ctx, id, TRACK);
	expect((await lakeView(ctx, id, { site: 'north-bay', winter: WINTER })).status).toBe(
		'noFreezeUp'
	);
	const record = { winter: WINTER, ...winterInput.parse({ freezeUpOn: '2026-11-10' }) };
	await saveSiteWinter(ctx, id, 'north-bay', record);
	const bay = await estimateOf(ctx, id, 'north-bay');
	expect(bay.total_m).toBeGreaterThan(0.1);
	await expect(saveSiteWinter(ctx, id, 'the-track', record)).rejects.toThrow('freezeUpOn');
});
