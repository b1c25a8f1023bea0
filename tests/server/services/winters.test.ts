import { expect, test } from 'vitest';
import { SiteNotFound } from '../../../src/lib/server/services/sites.ts';
import {
	getSiteWinter,
	listWinters,
	saveSiteWinter,
	winterInput,
	winterInputFor
} from '../../../src/lib/server/services/winters.ts';
import { addReadings } from '../../../src/lib/server/services/readings.ts';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const FULL = {
	freezeUpOn: '2026-11-20',
	freezeUpBy: '2026-11-23',
	iceOutOn: '2027-04-20',
	events: [
		{ kind: 'reopened', on: '2026-12-05', refrozeOn: '2026-12-09' },
		{ kind: 'cleared', on: '2027-01-10', snow_m: 0.02 },
		{ kind: 'packed', on: '2027-01-12', density_kg_m3: null },
		{ kind: 'pumped', on: '2027-01-20', water_m: 0.03 }
	]
};

test('a winter is kept with all its events, in their order', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	const record = { winter: '2026-27', ...winterInput.parse(FULL) };
	expect(await saveSiteWinter(ctx, id, 'main', record)).toEqual({ winter: '2026-27', ...FULL });
	expect(await getSiteWinter(ctx, id, 'main', '2026-27')).toEqual({ winter: '2026-27', ...FULL });
});

test('saving again replaces the whole record', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...winterInput.parse(FULL) });
	const shorter = winterInput.parse({ freezeUpOn: '2026-11-25' });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...shorter });
	expect(await getSiteWinter(ctx, id, 'main', '2026-27')).toEqual({
		winter: '2026-27',
		freezeUpOn: '2026-11-25',
		freezeUpBy: null,
		iceOutOn: null,
		events: []
	});
});

test('a winter that nobody recorded is a record of nothing', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	expect(await getSiteWinter(ctx, id, 'main', '1999-00')).toMatchObject({ freezeUpOn: null });
	expect(await listWinters(ctx, id, 'main')).toEqual([]);
});

test('winters are those with a freeze-up or a reading, newest first', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...winterInput.parse(FULL) });
	const reading = { on: '2024-01-10', kind: 'measured', holes: [{ total_m: 0.3 }] };
	await addReadings(ctx, id, 'main', [readingInput.parse(reading)]);
	expect(await listWinters(ctx, id, 'main')).toEqual(['2026-27', '2023-24']);
});

test('a site that the lake does not have is named', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	await expect(getSiteWinter(ctx, id, 'north bay', '2026-27')).rejects.toThrow(SiteNotFound);
});

test.each([
	['freeze-up outside the winter', { freezeUpOn: '2026-06-30' }, 'freezeUpOn'],
	['a last day before the first', { freezeUpBy: '2026-11-19' }, 'freezeUpBy'],
	['ice-out before freeze-up', { iceOutOn: '2026-11-20' }, 'iceOutOn'],
	['a day that is none', { iceOutOn: '2027-02-30' }, 'iceOutOn'],
	['an event before freeze-up', { events: [{ kind: 'packed', on: '2026-11-01' }] }, 'events.0.on'],
	[
		'ice that froze again before it opened',
		{ events: [{ kind: 'reopened', on: '2026-12-05', refrozeOn: '2026-12-01' }] },
		'events.0.refrozeOn'
	],
	[
		'clearing without a depth',
		{ events: [{ kind: 'cleared', on: '2026-12-05' }] },
		'events.0.snow_m'
	]
])('%s is refused and named', (_, wrong, field) => {
	const { error } = winterInputFor('2026-27').safeParse({ ...FULL, ...wrong });
	expect(error?.issues.map(({ path }) => path.join('.'))).toContain(field);
});

test('ice may go out after the last day of the winter', () => {
	expect(winterInputFor('2026-27').safeParse({ ...FULL, iceOutOn: '2027-07-15' }).success).toBe(
		true
	);
});
