import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { addDays, winterOf, type IsoDate } from '#lib/model/calendar.ts';
import { closeContext, openContext, type Context } from '#lib/server/context.ts';
import { lakeView } from '#lib/server/services/lake-view.ts';
import { createLake, newLake } from '#lib/server/services/lakes.ts';
import { readingInput } from '#lib/server/services/reading-input.ts';
import { addReadings } from '#lib/server/services/readings.ts';
import { whenIdle } from '#lib/server/services/refresh/queue.ts';
import { startRefresh } from '#lib/server/services/refresh/refresh-lake.ts';
import { storeHistory } from '#lib/server/services/refresh/store-history.ts';
import { newSource } from '#lib/server/services/sources/input.ts';
import { lakeOrderInput, setLakeOrder } from '#lib/server/services/sources/lake-order.ts';
import { createSource, openSource } from '#lib/server/services/sources/sources.ts';
import { storedAmounts } from '#lib/server/services/stored-amounts.ts';
import { saveSiteWinter, winterInput } from '#lib/server/services/winters.ts';
import {
	inventedService,
	inventedSource,
	type InventedService
} from '../keeping-up/invented-service.ts';
import { median } from '../median-time.ts';
import { timed, type Spent } from './spent.ts';

/** What one lake costs: a year of hours from two sources, thirty readings, a winter under way. */
export interface LakeCostReport {
	lakes: number;
	hours: number;
	readings: number;
	/** Of the database, for each lake, with its indexes and its part of half-full pages. */
	size_B: number;
	/** Bringing both sources up to date three hours on, from a service on this machine. */
	refresh: Spent & { calls: number };
	/** The view of a lake after that: its estimate made anew. */
	forecast: Spent;
}

const SOURCES = ['invented-first', 'invented-second'];
const HOURS = 365 * 24;
const READINGS = 30;
const LIMITS = { perDay: 1_000_000, perMinute: 100_000 };

export async function lakeCostReport(lakes: number): Promise<LakeCostReport> {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-bench-'));
	const service = await inventedService();
	const ctx = await openContext({
		FROSTLEDGER_DATA: folder,
		FROSTLEDGER_SOURCE_HOSTS: '127.0.0.1'
	});
	try {
		await createSources(ctx, service);
		const empty_B = await sizeOf(ctx);
		const ids: string[] = [];
		for (let lake = 0; lake < lakes; lake++) ids.push(await storeLake(ctx, lake));
		for (const id of ids) await refreshed(ctx, id);
		const size_B = (await sizeOf(ctx)) - empty_B;
		const later = { ...ctx, now: () => new Date(Date.now() + 3 * 3_600_000) };
		const before = service.calls_ms.length;
		const [refreshes, forecasts]: Spent[][] = [[], []];
		for (const id of ids) {
			refreshes?.push(await timed(() => refreshed(later, id)));
			forecasts?.push(await timed(() => lakeView(later, id, { toWinterEnd: true })));
		}
		return {
			lakes,
			hours: HOURS * SOURCES.length,
			readings: READINGS,
			size_B: size_B / lakes,
			refresh: {
				...medians(refreshes ?? []),
				calls: (service.calls_ms.length - before) / lakes
			},
			forecast: medians(forecasts ?? [])
		};
	} finally {
		await closeContext(ctx);
		await service.close();
		rmSync(folder, { recursive: true, force: true });
	}
}

async function createSources(ctx: Context, { address }: InventedService): Promise<void> {
	for (const id of SOURCES) {
		const source = { ...inventedSource(address, LIMITS), id, name: id };
		const limits = { ...LIMITS, minInterval_min: 0 };
		await createSource(ctx, newSource.parse({ source: { ...source, limits } }));
	}
}

/** A lake that froze over two months ago. */
async function storeLake(ctx: Context, lake: number): Promise<string> {
	const today = new Date().toISOString().slice(0, 10);
	const place = { latitude: 47 + lake / 100, longitude: -38, timeZone: 'Etc/GMT+3' };
	const facts = newLake.parse({ name: `Invented ${lake}`, water: 'lake', ...place });
	const { id } = await createLake(ctx, facts);
	const freezeUpOn = addDays(today, -60);
	const winter = winterInput.parse({ freezeUpOn });
	await saveSiteWinter(ctx, id, 'main', { winter: winterOf(freezeUpOn), ...winter });
	const order = SOURCES.map((source) => ({ source }));
	await setLakeOrder(ctx, id, lakeOrderInput.parse({ order }));
	for (const [index, source] of SOURCES.entries()) {
		const useId = lake * SOURCES.length + index + 1;
		await storeYear(ctx, { useId, lakeId: id, source, today, ...place });
	}
	for (let back = READINGS; back > 0; back--) {
		const on = addDays(today, -2 * back);
		const total_m = 0.05 + (60 - 2 * back) * 0.006;
		const holes = [0, 0.01, 0.02].map((more_m) => ({ total_m: total_m + more_m, snow_m: 0.03 }));
		const reading = { on, kind: 'measured', place: 'the bay', holes };
		await addReadings(ctx, id, 'main', [readingInput.parse(reading)]);
	}
	return id;
}

interface Year {
	useId: number;
	lakeId: string;
	source: string;
	today: IsoDate;
	latitude: number;
	longitude: number;
}

/** As the refreshing stores it. */
async function storeYear(ctx: Context, year: Year): Promise<void> {
	const { useId, lakeId, source, today, latitude, longitude } = year;
	const open = await openSource(ctx, source);
	const mapping = open?.source.calls[0]?.mapping;
	if (!open || !mapping) throw new Error(`${source} has no call`);
	const asked = { useId, config: open.row.config, station: null, latitude, longitude };
	const from = addDays(today, -365);
	const from_s = Date.parse(from) / 1000;
	const hours = Array.from({ length: HOURS }, (_, index) => ({
		at_s: from_s + index * 3600,
		air_degC: Number((-5 + 9 * Math.sin(index / 1400 + useId)).toFixed(1)),
		precipitation_kg_m2: index % 9 === 0 ? 0.4 : 0,
		snowfall_kg_m2: null,
		landSnow_m: 0.2,
		wind_m_s: 3.4
	}));
	const storing = { use: { id: useId, lake_id: lakeId }, asked, mapping };
	await storeHistory(ctx.db, storing, { hours, days: [] }, { from, to: addDays(today, -1) });
}

async function refreshed(ctx: Context, id: string): Promise<void> {
	await startRefresh(ctx, id);
	await whenIdle(ctx);
}

async function sizeOf(ctx: Context): Promise<number> {
	const stored = await storedAmounts(ctx);
	return (stored?.amounts ?? []).reduce((sum, { size_B }) => sum + size_B, 0);
}

function medians(spent: readonly Spent[]): Spent {
	return {
		duration_ms: median(spent.map(({ duration_ms }) => duration_ms)),
		cpu_ms: median(spent.map(({ cpu_ms }) => cpu_ms))
	};
}
