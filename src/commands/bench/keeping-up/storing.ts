import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { closeContext, openContext, type Context } from '#lib/server/context.ts';
import { createLake, newLake } from '#lib/server/services/lakes.ts';
import { storeHistory } from '#lib/server/services/refresh/store-history.ts';
import { newSource } from '#lib/server/services/sources/input.ts';
import { lakeOrderInput, setLakeOrder } from '#lib/server/services/sources/lake-order.ts';
import { createSource, openSource } from '#lib/server/services/sources/sources.ts';
import { median } from '../median-time.ts';
import { inventedSource } from './invented-service.ts';

export interface StoringReport {
	/** Hours of one winter, stored as a refresh stores them: checked, in one transaction, in a file. */
	rows: number;
	rows_per_s: number;
	fastest_rows_per_s: number;
}

const DAYS = 212; // from October to April
const FIRST = '2026-10-01';
const LAST = '2027-04-30';

/** Stores a whole winter's hours for so many lakes, one after the other, into a file of its own. */
export async function storingReport(lakes: number): Promise<StoringReport> {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-bench-'));
	const ctx = await openContext({ FROSTLEDGER_DATA: folder });
	try {
		const source = inventedSource('http://weather.invalid', { perDay: 1000, perMinute: 1000 });
		await createSource(ctx, newSource.parse({ source }));
		const rates: number[] = [];
		for (let lake = 1; lake <= lakes; lake++) rates.push(await storeWinter(ctx, lake));
		return {
			rows: DAYS * 24,
			rows_per_s: median(rates),
			fastest_rows_per_s: Math.max(...rates)
		};
	} finally {
		await closeContext(ctx);
		rmSync(folder, { recursive: true, force: true });
	}
}

/** Rows a second. */
async function storeWinter(ctx: Context, lake: number): Promise<number> {
	const facts = { name: `Invented ${lake}`, latitude: 47, longitude: -38, water: 'lake' };
	const { id } = await createLake(ctx, newLake.parse({ ...facts, timeZone: 'Etc/GMT+3' }));
	const order = [{ source: 'invented-service' }];
	await setLakeOrder(ctx, id, lakeOrderInput.parse({ order }));
	const hours = winterHours(lake);
	const open = await openSource(ctx, 'invented-service');
	const mapping = open?.source.calls[0]?.mapping;
	if (!mapping) throw new Error('the invented service has no call');
	const { config } = open.row;
	const { latitude, longitude } = facts;
	const asked = { useId: lake, config, station: null, latitude, longitude };
	const storing = { use: { id: lake, lake_id: id }, asked, mapping };
	const start_ms = performance.now();
	await storeHistory(ctx.db, storing, { hours, days: [] }, { from: FIRST, to: LAST });
	return (hours.length * 1000) / (performance.now() - start_ms);
}

function winterHours(lake: number) {
	const from_s = Date.parse(FIRST) / 1000;
	return Array.from({ length: DAYS * 24 }, (_, index) => ({
		at_s: from_s + index * 3600,
		air_degC: Number((-8 + 6 * Math.sin(index / 40 + lake)).toFixed(1)),
		precipitation_kg_m2: index % 9 === 0 ? 0.4 : 0,
		snowfall_kg_m2: index % 9 === 0 ? 0.4 : 0,
		landSnow_m: 0.2,
		wind_m_s: 3.4
	}));
}
