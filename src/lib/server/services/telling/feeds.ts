import type { UnitChoice } from '#lib/model/shown-length.ts';
import type { Context } from '../../context.ts';
import type { FeedKind } from '../../storage/telling-schema.ts';
import {
	deleteFeed,
	findFeed,
	findTelling,
	noteFetched,
	writeFeed,
	type FeedRow,
	type TellingRow
} from '../../storage/telling.ts';
import { refetchable } from '../../storage/refetchable.ts';
import { getLake, type LakeRecord } from '../lakes.ts';
import { NotFound } from '../not-found.ts';
import { lookAt } from './look.ts';
import { hashOf, newSecret } from './secret.ts';
import { ensureTelling, switchedOff, switchedOn } from './settings.ts';

export type { FeedKind };

/** What the address of each feed ends in. */
export const FEED_FILES: Record<FeedKind, string> = {
	calendar: 'calendar.ics',
	changes: 'changes.atom'
};

/** An address that leads nowhere, or nowhere any more. Which of the two is not told. */
export class FeedNotFound extends NotFound {
	constructor(kind: FeedKind) {
		super('feed', FEED_FILES[kind], ' at this address');
	}
}

/**
 * Switches a feed on, or gives it another address; the one before leads nowhere then. Tells the new
 * path this once: its secret is kept as a digest only. `units` are those of the first who switches
 * anything on, until they are chosen.
 * @throws LakeNotFound
 */
export async function makeFeed(
	ctx: Context,
	lakeId: string,
	kind: FeedKind,
	units?: UnitChoice
): Promise<string> {
	await getLake(ctx, lakeId);
	await ensureTelling(ctx, lakeId, units);
	const secret = newSecret();
	await writeFeed(ctx.db, {
		lake_id: lakeId,
		kind,
		secret_hash: hashOf(secret),
		made_at: ctx.now().toISOString(),
		fetched_at: null
	});
	await switchedOn(ctx, lakeId);
	return `/feeds/${secret}/${FEED_FILES[kind]}`;
}

/** Its address leads nowhere from now on. @throws LakeNotFound */
export async function revokeFeed(ctx: Context, lakeId: string, kind: FeedKind): Promise<void> {
	await getLake(ctx, lakeId);
	await ctx.db.transaction().execute(async (tx) => {
		await deleteFeed(tx, lakeId, kind);
		await switchedOff(tx, lakeId);
	});
}

export interface OpenFeed {
	lake: LakeRecord;
	telling: TellingRow;
	feed: FeedRow;
}

/** The feed of a secret address. @throws FeedNotFound, also for a lake that is deleted */
export async function openFeed(ctx: Context, kind: FeedKind, secret: string): Promise<OpenFeed> {
	const feed = await findFeed(ctx.db, kind, hashOf(secret));
	if (!feed) throw new FeedNotFound(kind);
	const lake = await lakeOf(ctx, feed);
	const before = await findTelling(ctx.db, feed.lake_id);
	if (before && before.looked_at === null) await lookAt(ctx, feed.lake_id);
	const telling = await findTelling(ctx.db, feed.lake_id);
	if (!telling) throw new FeedNotFound(kind);
	await noteHour(ctx, feed);
	return { lake, telling, feed };
}

async function lakeOf(ctx: Context, { lake_id, kind }: FeedRow): Promise<LakeRecord> {
	try {
		return await getLake(ctx, lake_id);
	} catch (cause) {
		if (cause instanceof NotFound) throw new FeedNotFound(kind);
		throw cause;
	}
}

const HOUR_MS = 3_600_000;

/** Once an hour: a calendar that asks every minute does not write every minute. */
async function noteHour(ctx: Context, feed: FeedRow): Promise<void> {
	const now = ctx.now();
	const isLately =
		feed.fetched_at !== null && now.getTime() - Date.parse(feed.fetched_at) < HOUR_MS;
	if (!isLately) await refetchable(ctx.db, (db) => noteFetched(db, feed, now.toISOString()));
}
