import { createReadStream, existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { Context } from '../context.ts';
import {
	countLakeRows,
	deleteUnfinishedInvented,
	hasUnfinishedInvented
} from '../storage/lakes.ts';
import { demoPlaces, loadDemoPlaces } from './demo-places.ts';
import { demoSites, demoWinter, loadDemoSite, loadDemoSites, refuseUnread } from './demo-sites.ts';
import { isoDate } from './fields.ts';
import { importWeather } from './import-weather.ts';
import { alone } from './lease.ts';
import { createLake, newLake, type LakeRecord } from './lakes.ts';
import { MAIN_SITE } from './sites.ts';

/** Dev and built server both run in the project's folder. */
export const DEMO_FOLDER = join('data', 'demo');

const demoFile = z.object({
	lake: newLake,
	winter: demoWinter,
	/** Earlier ones, whose weather may come again and whose readings teach. */
	pastWinters: z.array(demoWinter),
	/** The day that the demo always shows. */
	today: isoDate,
	sites: demoSites.default([]),
	...demoPlaces.shape
});

/**
 * Puts the invented lake into an empty database, so that a first visit has something to look at.
 * Its weather comes last: an invented lake without any is the rest of a broken start, and is redone.
 */
export async function loadDemo(ctx: Context, folder = DEMO_FOLDER): Promise<LakeRecord | null> {
	if (!existsSync(join(folder, 'lake.json')) || !(await isWanted(ctx))) return null;
	// Another process may be at it, or have died of it: its rest is not to be taken for a broken start.
	return alone(ctx, 'demo', async () => {
		await deleteUnfinishedInvented(ctx.db);
		return (await isWanted(ctx)) ? load(ctx, folder) : null;
	});
}

async function isWanted({ db }: Context): Promise<boolean> {
	return (await countLakeRows(db)) === 0 || (await hasUnfinishedInvented(db));
}

async function load(ctx: Context, folder: string): Promise<LakeRecord> {
	const demo = demoFile.parse(JSON.parse(await readFile(join(folder, 'lake.json'), 'utf8')));
	const lake = await createLake(ctx, demo.lake, { today: demo.today });
	const main = { winters: [...demo.pastWinters, demo.winter], readings: 'readings.csv' };
	await loadDemoSite(ctx, lake.id, MAIN_SITE, main, folder);
	await loadDemoSites(ctx, lake.id, demo.sites, folder);
	await loadDemoPlaces(ctx, lake.id, demo);
	const weather = createReadStream(join(folder, 'weather.csv'));
	refuseUnread('weather.csv', await importWeather(ctx, lake.id, weather));
	return lake;
}
