import { winterSpan, type WinterId } from '#lib/model/calendar.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { Context } from '../context.ts';
import * as storage from '../storage/readings.ts';
import { newId } from './ids.ts';
import { getLake } from './lakes.ts';
import { refuseAhead } from './not-ahead.ts';
import { findStanding, ReadingNotFound } from './standing-reading.ts';
import type { NewReading } from './reading-input.ts';
import { getSite } from './sites.ts';
import { nudgeTelling } from './telling/nudge.ts';

export { ReadingNotFound };

/** By day; of one winter, or all. @throws LakeNotFound, SiteNotFound */
export async function listReadings(
	ctx: Context,
	lakeId: string,
	site: string,
	winter?: WinterId
): Promise<Reading[]> {
	await getSite(ctx, lakeId, site);
	const [from, to] = winter === undefined ? [] : winterSpan(winter);
	const span = from !== undefined && to !== undefined ? { from, to } : {};
	return storage.listReadingRows(ctx.db, { lakeId, site, ...span });
}

/** @throws LakeNotFound, ReadingNotFound */
export async function getReading(ctx: Context, lakeId: string, id: string): Promise<Reading> {
	return (await findStanding(ctx, lakeId, id)).reading;
}

/**
 * Stores all of them or none; the ids come back in the same order.
 * @throws LakeNotFound, SiteNotFound; ZodError for a day to come
 */
export async function addReadings(
	ctx: Context,
	lakeId: string,
	site: string,
	readings: readonly NewReading[]
): Promise<string[]> {
	await getSite(ctx, lakeId, site);
	await refuseAhead(ctx, lakeId, readings);
	const withIds = readings.map((reading) => ({ id: newId('r'), ...reading }));
	await storage.insertReadings(ctx.db, { lakeId, site, createdAt: ctx.now() }, withIds);
	nudgeTelling(ctx, lakeId);
	return withIds.map(({ id }) => id);
}

/** Hides the reading until {@link restoreReading}. */
export async function deleteReading(ctx: Context, lakeId: string, id: string): Promise<void> {
	await getReading(ctx, lakeId, id);
	await storage.markReading(ctx.db, id, ctx.now());
	nudgeTelling(ctx, lakeId);
}

/** Takes a deletion back. @throws ReadingNotFound when there never was such a reading. */
export async function restoreReading(ctx: Context, lakeId: string, id: string): Promise<Reading> {
	await getLake(ctx, lakeId);
	const found = await storage.findReading(ctx.db, lakeId, id);
	if (!found) throw new ReadingNotFound(lakeId, id);
	await storage.markReading(ctx.db, id, null);
	nudgeTelling(ctx, lakeId);
	return found.reading;
}
