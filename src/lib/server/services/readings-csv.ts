import type { WinterId } from '#lib/model/calendar.ts';
import type { Context } from '../context.ts';
import { getLake } from './lakes.ts';
import { latestOf } from './latest.ts';
import { parseReadings, type ParsedReadings } from './parse-readings.ts';
import { HEADER, toRows } from './reading-rows.ts';
import { addReadings, listReadings } from './readings.ts';
import { getSite } from './sites.ts';

/** All of `readings` is stored, or nothing. */
export interface ReadingsImport extends ParsedReadings {
	status: 'stored' | 'dryRun' | 'refused';
	/** Ids of what was stored, in the same order. */
	ids: string[];
}

/** A row a hole, with the readings' other cells repeated. @throws LakeNotFound, SiteNotFound */
export async function readingsToCsv(
	ctx: Context,
	lakeId: string,
	site: string,
	winter?: WinterId
): Promise<string> {
	const readings = await listReadings(ctx, lakeId, site, winter);
	const rows = readings.flatMap(toRows);
	return [HEADER, ...rows].map((row) => `${row.join(',')}\r\n`).join('');
}

/** Rows of the same day, place and kind are holes of one reading. */
export async function readingsFromCsv(
	ctx: Context,
	lakeId: string,
	site: string,
	text: string,
	{ dryRun = false }: { dryRun?: boolean } = {}
): Promise<ReadingsImport> {
	await getSite(ctx, lakeId, site);
	const { on: today } = latestOf(ctx, await getLake(ctx, lakeId));
	const { readings, problems, leftOut } = parseReadings(text, today);
	if (problems.length > 0) return { status: 'refused', readings: [], ids: [], problems, leftOut };
	if (dryRun) return { status: 'dryRun', readings, ids: [], problems, leftOut };
	const ids = await addReadings(ctx, lakeId, site, readings);
	return { status: 'stored', readings, ids, problems, leftOut };
}
