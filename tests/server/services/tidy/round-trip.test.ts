import fc from 'fast-check';
import type { DayValues } from '../../../../src/lib/model/hours-to-days.ts';
import type { WeatherDay } from '../../../../src/lib/model/weather.ts';
import { expect, test } from 'vitest';
import { createLake, newLake } from '../../../../src/lib/server/services/lakes.ts';
import { loadDemo } from '../../../../src/lib/server/services/demo.ts';
import { readingInput } from '../../../../src/lib/server/services/reading-input.ts';
import { addReadings, listReadings } from '../../../../src/lib/server/services/readings.ts';
import { createSite, listSites } from '../../../../src/lib/server/services/sites.ts';
import { newSite } from '../../../../src/lib/server/services/site-input.ts';
import { packWinters, unpackWinters } from '../../../../src/lib/server/services/tidy/archive.ts';
import { exportWinters } from '../../../../src/lib/server/services/tidy/export-winters.ts';
import { importWinters } from '../../../../src/lib/server/services/tidy/import-winters.ts';
import { weatherTable } from '../../../../src/lib/server/services/tidy/weather-rows.ts';
import { listWeather } from '../../../../src/lib/server/services/weather-csv.ts';
import {
	getSiteWinter,
	saveSiteWinter,
	winterInput
} from '../../../../src/lib/server/services/winters.ts';
import { readImportedDays } from '../../../../src/lib/server/storage/weather-days.ts';
import { freshContext, inventedLake } from '../../../support/fresh-context.ts';
import * as random from '../../../support/random-lake.ts';
import type { Context } from '../../../../src/lib/server/context.ts';

/** After all the days of the random lakes. */
const NOW = '2027-06-10T12:00:00Z';

/** Through a zip file into an empty database, and out again. */
async function carried(
	files: Map<string, string>
): Promise<{ ctx: Context; again: Map<string, string> }> {
	const unpacked = unpackWinters(packWinters(files, new Date('2027-02-10')));
	expect(unpacked.problem).toBe(null);
	const ctx = await freshContext(NOW);
	const report = await importWinters(ctx, unpacked.files ?? new Map());
	expect(report).toMatchObject({ status: 'stored', problems: [], leftOut: [] });
	const again = await exportWinters(ctx, report.lakes[0]?.id ?? '');
	return { ctx, again };
}

test('any lake that is exported, taken in and exported again is the same', async () => {
	await fc.assert(
		fc.asyncProperty(
			random.facts,
			random.days,
			random.winter,
			random.readings,
			random.readings,
			async (facts, days, winter, ofMain, ofBay) => {
				const ctx = await freshContext(NOW);
				const lake = await createLake(ctx, newLake.parse(facts));
				const record = winterInput.safeParse(winter);
				if (record.success) {
					await saveSiteWinter(ctx, lake.id, 'main', { winter: '2026-27', ...record.data });
				}
				const bay = await createSite(ctx, lake.id, newSite.parse({ name: 'A bay', kind: 'bay' }));
				const bayId = bay.status === 'stored' ? bay.site.id : '';
				const parsed = (list: typeof ofMain) => list.map((one) => readingInput.parse(one));
				await addReadings(ctx, lake.id, 'main', parsed(ofMain));
				await addReadings(ctx, lake.id, bayId, parsed(ofBay));
				const files = await exportWinters(ctx, lake.id);
				files.set(`${lake.id}/weather.csv`, weatherTable(days.map(observed), 'frostledger'));
				const { again: first, ctx: other } = await carried(files);
				const kept = await readImportedDays(other.db, lake.id, '0000-01-01', '9999-12-31');
				expect(kept).toEqual(days);
				const { again } = await carried(first);
				expect(Object.fromEntries(again)).toEqual(Object.fromEntries(first));
				first.delete(`${lake.id}/weather.csv`);
				files.delete(`${lake.id}/weather.csv`);
				expect(Object.fromEntries(first)).toEqual(Object.fromEntries(files));
				expect(await listSites(other, lake.id)).toEqual(await listSites(ctx, lake.id));
			}
		),
		{ numRuns: 40 }
	);
}, 120_000);

function observed(day: DayValues): WeatherDay {
	return { source: 'observed', ...day };
}

test('the invented lake stays what it was, and invented', async () => {
	const ctx = await freshContext(NOW);
	const lake = await loadDemo(ctx);
	const id = lake?.id ?? '';
	const files = await exportWinters(ctx, id);
	expect(files.get('about.txt')).toContain('ALL NUMBERS ARE INVENTED');
	const { again, ctx: other } = await carried(files);
	expect(Object.fromEntries(again)).toEqual(Object.fromEntries(files));
	expect(await listWeather(other, id)).toEqual(await listWeather(ctx, id));
	const plain = async (of: Context) =>
		(await listReadings(of, id, 'main')).map((reading) => ({ ...reading, id: '' }));
	expect(await plain(other)).toEqual(await plain(ctx));
	expect(await getSiteWinter(other, id, 'main', '2025-26')).toEqual(
		await getSiteWinter(ctx, id, 'main', '2025-26')
	);
});

test('taken in beside the one it comes from, a lake is another one', async () => {
	const ctx = await freshContext(NOW);
	const { id } = await inventedLake(ctx);
	const files = await exportWinters(ctx, id);
	const dry = await importWinters(ctx, files, { dryRun: true });
	expect(dry).toMatchObject({ status: 'dryRun', lakes: [{ id: null, isNameTaken: true }] });
	const { lakes } = await importWinters(ctx, files);
	expect(lakes[0]?.id).not.toBe(id);
	expect(lakes[0]?.id).toMatch(/^test-lake-/);
});
