import { winterOf } from '#lib/model/calendar.ts';
import type { SiteWinter } from '#lib/model/site-winter.ts';
import type { Context } from '../../context.ts';
import { listLakeSourceRows } from '../../storage/lake-sources.ts';
import { listKeptWinters, readSiteWinter } from '../../storage/winters.ts';
import { getLake, type LakeRecord } from '../lakes.ts';
import { HEADER, toRows } from '../reading-rows.ts';
import { listReadings } from '../readings.ts';
import { listSites, type SiteRecord } from '../sites.ts';
import { attributionsOf } from '../sources/attributions.ts';
import { listWeather } from '../weather-csv.ts';
import { aboutText } from './about.ts';
import { ABOUT_FILE, filesOf, LAKES_FILE } from './folder.ts';
import { ICE_HEADER, iceCells } from './ice-rows.ts';
import { codeOf, LAKE_HEADER, lakeCells } from './lake-rows.ts';
import { weatherTable } from './weather-rows.ts';
import {
	EVENT_HEADER,
	eventCells,
	FREEZE_UP_HEADER,
	freezeUpCells,
	touchedFrom
} from './winter-rows.ts';
import { writeTable, type Cell } from './write-table.ts';

/**
 * A lake as a tidy winters folder: its weather by days, all origins joined, and of every site the
 * winters and readings. Not in it are hours, forecasts, sources, loads, weak spots, routes, positions
 * of readings and what is deleted. @throws LakeNotFound
 */
export async function exportWinters(ctx: Context, lakeId: string): Promise<Map<string, string>> {
	const lake = await getLake(ctx, lakeId);
	const sites = await listSites(ctx, lakeId);
	const files = filesOf(lake.id);
	const source = lake.isInvented ? 'invented' : 'frostledger';
	const told = await attributionsOf(ctx, await listLakeSourceRows(ctx.db, lakeId));
	const tables = new Map([
		[ABOUT_FILE, aboutText(lake, ctx.now(), told)],
		[
			LAKES_FILE,
			writeTable(
				LAKE_HEADER,
				sites.map((site) => lakeCells(lake, site, source))
			)
		],
		[files.weather, weatherTable(await listWeather(ctx, lakeId), source)]
	]);
	const ice: Cell[][] = [];
	const freezeUps: Cell[][] = [];
	const events: Cell[][] = [];
	for (const site of sites) {
		const of = await tablesOfSite(ctx, lake, site);
		ice.push(...of.ice);
		freezeUps.push(...of.freezeUps);
		events.push(...of.events);
		tables.set(files.readings(site.id), of.readings);
	}
	tables.set(files.ice, writeTable(ICE_HEADER, ice));
	tables.set(files.freezeUp, writeTable(FREEZE_UP_HEADER, freezeUps));
	tables.set(files.events, writeTable(EVENT_HEADER, events));
	return tables;
}

async function tablesOfSite(ctx: Context, lake: LakeRecord, site: SiteRecord) {
	const code = codeOf(lake, site);
	const winters = await wintersOf(ctx, lake.id, site.id);
	const touched = new Map(winters.map((winter) => [winter.winter, touchedFrom(winter)]));
	const readings = await listReadings(ctx, lake.id, site.id);
	const untouched = readings.filter(({ on }) => {
		const from = touched.get(winterOf(on)) ?? null;
		return from === null || on < from;
	});
	return {
		ice: untouched.map((reading) => iceCells(code, reading)).filter((row) => row !== null),
		freezeUps: winters.map((winter) => freezeUpCells(code, winter)),
		events: winters.flatMap(({ winter, events }) =>
			events.map((event) => eventCells(code, winter, event))
		),
		readings: readingsTable(readings)
	};
}

async function wintersOf(ctx: Context, lakeId: string, site: string): Promise<SiteWinter[]> {
	const records: SiteWinter[] = [];
	for (const winter of await listKeptWinters(ctx.db, { lakeId, site })) {
		const record = await readSiteWinter(ctx.db, { lakeId, site }, winter);
		if (record.freezeUpOn !== null || record.events.length > 0) records.push(record);
	}
	return records;
}

/** The app's own table of readings, numbered: rows of one number are holes of one reading. */
function readingsTable(readings: Awaited<ReturnType<typeof listReadings>>): string {
	const rows = readings.flatMap((reading, index) =>
		toRows(reading).map((cells) => [String(index + 1), ...cells])
	);
	return [['reading', ...HEADER], ...rows].map((row) => `${row.join(',')}\r\n`).join('');
}
