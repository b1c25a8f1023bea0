import type { IsoDate } from '#lib/model/calendar.ts';
import { joinedHoles } from '#lib/model/joined-holes.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { Context } from '../context.ts';
import { listReadingIdsSince } from '../storage/recent-readings.ts';
import { newId } from './ids.ts';
import type { NewReading } from './reading-input.ts';
import { putPosition, type Position } from './reading-positions.ts';
import { getReading, listReadings } from './readings.ts';
import { storeEach } from './send-readings.ts';

/** A hole as it was typed beside it. */
export interface TypedHole {
	reading: NewReading;
	/** Where the phone was; the first of a reading is kept. */
	position: Position | null;
	/** How many holes of its day were there when the form was made. */
	seen: number;
	/** Made on the phone, for this very hole; `null` without script. */
	clientId?: string | null;
}

/** A hole joins a reading that was begun no longer ago than this. Our choice. */
const JOINS_MS = 3_600_000;
/** As many as a reading may have. */
const MOST_HOLES = 100;

/**
 * Stores a hole at once, and returns its reading's id. It joins the reading of the same place, day and
 * way that was begun within the hour; else it begins one. So each hole is kept from the moment it is
 * typed, and those of one visit count together.
 *
 * What is sent twice, because the first answer got lost on its way, is stored once: by the phone's own
 * id for it, or where there is none by what was there when the form was made.
 * @throws LakeNotFound, SiteNotFound, ClientIdTaken
 */
export async function logHole(
	ctx: Context,
	lakeId: string,
	site: string,
	{ reading, position, seen, clientId = null }: TypedHole
): Promise<string> {
	const repeated = clientId === null ? await storedBefore(ctx, lakeId, site, reading, seen) : null;
	if (repeated !== null) return repeated;
	const id = await joinOrAdd(ctx, lakeId, site, { reading, clientId });
	if (position !== null) await putPosition(ctx, lakeId, id, position);
	return id;
}

async function joinOrAdd(
	ctx: Context,
	lakeId: string,
	site: string,
	{ reading, clientId }: { reading: NewReading; clientId: string | null }
): Promise<string> {
	const joins = await joinable(ctx, lakeId, site, reading);
	const row = { clientId, joins, reading: { id: newId('r'), ...reading } };
	const [id = ''] = await storeEach(ctx, lakeId, site, [row]);
	return id;
}

async function joinable(
	ctx: Context,
	lakeId: string,
	site: string,
	reading: NewReading
): Promise<{ reading: string } | null> {
	const since = new Date(ctx.now().getTime() - JOINS_MS);
	for (const id of await listReadingIdsSince(ctx.db, { lakeId, site, since })) {
		const joined = joinedHoles(await getReading(ctx, lakeId, id), reading);
		if (joined !== null && joined.holes.length <= MOST_HOLES) return { reading: id };
	}
	return null;
}

/** A site's readings of one day. @throws LakeNotFound, SiteNotFound */
export async function readingsOn(
	ctx: Context,
	lakeId: string,
	site: string,
	on: IsoDate
): Promise<Reading[]> {
	return (await listReadings(ctx, lakeId, site)).filter((reading) => reading.on === on);
}

/** @example holesIn(readings) // => 4 */
export function holesIn(readings: readonly Pick<Reading, 'holes' | 'kind'>[]): number {
	// Where ice broke there may be no hole to measure, and it is one to count all the same.
	return readings.reduce((sum, { holes }) => sum + Math.max(1, holes.length), 0);
}

/** The reading that has this very hole already, stored since the form was made. */
async function storedBefore(
	ctx: Context,
	lakeId: string,
	site: string,
	reading: NewReading,
	seen: number
): Promise<string | null> {
	const ofDay = await readingsOn(ctx, lakeId, site, reading.on);
	if (holesIn(ofDay) <= seen) return null;
	const typed = lastHole(reading);
	return ofDay.findLast((each) => lastHole(each) === typed)?.id ?? null;
}

function lastHole({ place, kind, holes }: Pick<Reading, 'place' | 'kind' | 'holes'>): string {
	const { total_m, clear_m, white_m, snow_m, slush_m, freeboard_m } = holes.at(-1) ?? {};
	return JSON.stringify([place, kind, total_m, clear_m, white_m, snow_m, slush_m, freeboard_m]);
}
