import { z } from 'zod';
import { MESSAGE_KINDS, type MessageKind } from '#lib/model/telling/message.ts';
import type { LoadCase } from '#lib/model/load-case.ts';
import type { UnitChoice } from '#lib/model/shown-length.ts';
import type { Context } from '../../context.ts';
import type { Database } from '../../storage/schema.ts';
import {
	findTelling,
	insertTelling,
	listFeeds,
	updateTelling,
	type FeedRow,
	type TellingRow
} from '../../storage/telling.ts';
import { countOutbox, findWebhook, type WebhookRow } from '../../storage/webhooks.ts';
import { getLake } from '../lakes.ts';
import { listLoads } from '../own-loads.ts';
import { listSites } from '../sites.ts';
import { nudgeTelling } from './nudge.ts';
import { chosenSites } from './told-sites.ts';
import type { Kysely } from 'kysely';

/** What is told of a lake, and by which ways. */
export interface TellingRecord {
	lake: string;
	/** Ids of the sites whose ice is told of, one at least. */
	sites: string[];
	/** Ids of the loads that are told of. */
	loads: string[];
	/** Another reading is due so many days after the last. */
	readingAfter_d: number;
	/** Of everything that is told. */
	units: UnitChoice;
	/** `null`: switched off, which is how all three are found. */
	calendar: FeedState | null;
	changes: FeedState | null;
	webhook: WebhookState | null;
}

export interface FeedState {
	madeAt: Date;
	/** When somebody last asked for it, to within an hour; `null` when nobody has. */
	fetchedAt: Date | null;
}

export interface WebhookState {
	/** The rest of the address may hold a secret and is not told. */
	host: string;
	kinds: MessageKind[];
	madeAt: Date;
	deliveredAt: Date | null;
	/** Messages that wait to be delivered. */
	waiting: number;
	/** In a row. */
	failures: number;
	nextAt: Date | null;
	/** When it was given up; `null` while it is tried. */
	stoppedAt: Date | null;
	/** Why the last try failed. */
	trouble: string | null;
}

/** Holes support a status for a week at most, where there is no ample ice. */
const USUAL_READING_AFTER_d = 7;
/** Somebody on foot, and what the lake has of its own. */
const USUAL_LOAD = 'on-foot';
const MOST_LOADS = 40;
const MOST_SITES = 40;
const METRIC: UnitChoice = { measure: 'metric', mass: 'kg' };

const shape = z.strictObject({
	sites: z.array(z.string()).min(1, 'must name one site at least').max(MOST_SITES).exactOptional(),
	loads: z.array(z.string()).max(MOST_LOADS).exactOptional(),
	readingAfter_d: z
		.int()
		.min(3, 'must be 3 days or more')
		.max(60, 'must be 60 days or less')
		.exactOptional(),
	units: z
		.strictObject({ measure: z.enum(['metric', 'imperial']), mass: z.enum(['kg', 'lb']) })
		.exactOptional()
});

export const tellingChange = shape.meta({ id: 'TellingChange' });

export type TellingChange = z.output<typeof shape>;

interface OfLake {
	loads: readonly { id: string }[];
	sites: readonly { id: string }[];
}

/** The same, with every load and site held to be one of the lake's. */
export function tellingChangeFor(lake: OfLake) {
	return shape.superRefine((change, check) => {
		for (const name of ['loads', 'sites'] as const) {
			const known = new Set(lake[name].map(({ id }) => id));
			for (const [at, id] of (change[name] ?? []).entries()) {
				if (known.has(id)) continue;
				const message = `must be a ${name.slice(0, -1)} of this lake, got "${id.slice(0, 80)}"`;
				check.addIssue({ code: 'custom', path: [name, at], message });
			}
		}
	});
}

/** What a lake has that can be told of. @throws LakeNotFound */
export async function tellable(ctx: Context, lakeId: string) {
	await getLake(ctx, lakeId);
	return { loads: await listLoads(ctx, lakeId), sites: await listSites(ctx, lakeId) };
}

/** @throws LakeNotFound */
export async function getTelling(ctx: Context, lakeId: string): Promise<TellingRecord> {
	const lake = await tellable(ctx, lakeId);
	const row = await findTelling(ctx.db, lakeId);
	const feeds = await listFeeds(ctx.db, lakeId);
	const webhook = await findWebhook(ctx.db, lakeId);
	const feedOf = (kind: FeedRow['kind']) => feedState(feeds.find((feed) => feed.kind === kind));
	return {
		lake: lakeId,
		sites: chosenSites(row, lake.sites),
		loads: chosenLoads(row, lake.loads),
		readingAfter_d: row?.reading_after_d ?? USUAL_READING_AFTER_d,
		units: row ? { measure: row.measure, mass: row.mass } : METRIC,
		calendar: feedOf('calendar'),
		changes: feedOf('changes'),
		webhook: webhook ? webhookState(webhook, await countOutbox(ctx.db, lakeId)) : null
	};
}

/** What is absent from `change` stays. @throws LakeNotFound; ZodError for a load or site that is none. */
export async function updateTellingOf(
	ctx: Context,
	lakeId: string,
	change: TellingChange
): Promise<TellingRecord> {
	const { sites, loads, readingAfter_d, units } = tellingChangeFor(
		await tellable(ctx, lakeId)
	).parse(change);
	await ensureTelling(ctx, lakeId);
	const values = {
		...(sites === undefined ? {} : { sites: JSON.stringify([...new Set(sites)]) }),
		...(loads === undefined ? {} : { loads: JSON.stringify([...new Set(loads)]) }),
		...(readingAfter_d === undefined ? {} : { reading_after_d: readingAfter_d }),
		...units
	};
	if (Object.keys(values).length > 0) await updateTelling(ctx.db, lakeId, values);
	nudgeTelling(ctx, lakeId);
	return getTelling(ctx, lakeId);
}

/** The loads that are told of; those that were deleted since are not. */
export function chosenLoads(
	row: Pick<TellingRow, 'loads'> | undefined,
	loads: readonly LoadCase[]
): string[] {
	const ids = loads.map(({ id }) => id);
	if (!row || row.loads === null)
		return ids.filter((id) => id === USUAL_LOAD || id.startsWith('own-'));
	const chosen = new Set(z.array(z.string()).parse(JSON.parse(row.loads)));
	return ids.filter((id) => chosen.has(id));
}

export async function ensureTelling(ctx: Context, lakeId: string, units = METRIC): Promise<void> {
	await insertTelling(ctx.db, {
		lake_id: lakeId,
		loads: null,
		sites: null,
		reading_after_d: USUAL_READING_AFTER_d,
		since_at: null,
		state: null,
		looked_at: null,
		looked_of: null,
		looked_on: null,
		named: null,
		changed_at: ctx.now().toISOString(),
		...units
	});
}

/** A way was switched on: with the first, telling begins, and nothing counts as told. */
export async function switchedOn(ctx: Context, lakeId: string): Promise<void> {
	const row = await findTelling(ctx.db, lakeId);
	if (row && row.since_at === null) {
		await updateTelling(ctx.db, lakeId, { since_at: ctx.now().toISOString() });
	}
	nudgeTelling(ctx, lakeId);
}

/** A way was switched off: with the last, all that counts as told is forgotten. */
export async function switchedOff(db: Kysely<Database>, lakeId: string): Promise<void> {
	const isAnyOn = (await listFeeds(db, lakeId)).length > 0 || (await findWebhook(db, lakeId));
	if (isAnyOn) return;
	await updateTelling(db, lakeId, {
		since_at: null,
		state: null,
		looked_at: null,
		looked_of: null,
		looked_on: null
	});
}

export function kindsOf({ kinds }: Pick<WebhookRow, 'kinds'>): MessageKind[] {
	const known = new Set<string>(z.array(z.string()).parse(JSON.parse(kinds)));
	return MESSAGE_KINDS.filter((kind) => known.has(kind));
}

function feedState(row: FeedRow | undefined): FeedState | null {
	return row ? { madeAt: new Date(row.made_at), fetchedAt: instant(row.fetched_at) } : null;
}

function webhookState(row: WebhookRow, waiting: number): WebhookState {
	return {
		host: new URL(row.address).host,
		kinds: kindsOf(row),
		madeAt: new Date(row.made_at),
		deliveredAt: instant(row.delivered_at),
		waiting,
		failures: row.failures,
		nextAt: instant(row.next_at),
		stoppedAt: instant(row.stopped_at),
		trouble: row.trouble
	};
}

function instant(text: string | null): Date | null {
	return text === null ? null : new Date(text);
}
