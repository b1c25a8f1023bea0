import type { Kysely } from 'kysely';
import type { TellingFacts } from '#lib/model/telling/facts.ts';
import { tellingDates } from '#lib/model/telling/dates.ts';
import { newsMessage } from '#lib/model/telling/news-message.ts';
import { newsOf, type Told } from '#lib/model/telling/told.ts';
import { wordsFor } from '#lib/model/words.ts';
import type { Context } from '../../context.ts';
import type { Database } from '../../storage/schema.ts';
import {
	deleteMessagesBefore,
	insertMessages,
	type MessageRow
} from '../../storage/telling-messages.ts';
import { findTelling, updateTelling, type TellingRow } from '../../storage/telling.ts';
import { nextTurn } from '../next-turn.ts';
import type { LakeRecord } from '../lakes.ts';
import { storeDates } from './store-dates.ts';
import { toRow } from './to-row.ts';
import { tellOfReadings } from './tell-of-readings.ts';
import { enqueueMessages } from './webhook/enqueue.ts';

export interface Looked {
	/** `null` where nothing is estimated: what was told stands. */
	facts: TellingFacts | null;
	/** The lake's last winter is over: no day of it is shown any more. */
	isOutOfSeason: boolean;
	look: Pick<TellingRow, 'looked_at' | 'looked_of' | 'looked_on'>;
}

/** How long messages are kept. */
const KEPT_D = 120;

/**
 * Holds what is known against what was told, and writes down the news, the dates and what is to be
 * sent in one transaction: what counts as told was told, whenever the power goes.
 */
export async function tell(ctx: Context, lake: LakeRecord, looked: Looked): Promise<void> {
	await nextTurn();
	await ctx.db.transaction().execute(async (tx) => {
		const row = await findTelling(tx, lake.id);
		// Switched off while it was looked at.
		if (!row || row.since_at === null) return;
		const at = ctx.now();
		const now = at.toISOString();
		const messages = await tellNews(tx, lake, row, looked.facts, now);
		const ofReadings = await tellOfReadings(tx, lake, {
			since: row.since_at,
			now: at,
			words: wordsFor(row)
		});
		const all = [...messages, ...ofReadings.added];
		await insertMessages(tx, all);
		await enqueueMessages(tx, ctx, lake, all);
		const dates = looked.facts ? tellingDates(looked.facts, wordsFor(row)) : null;
		const isMoved =
			dates || looked.isOutOfSeason ? await storeDates(tx, lake.id, dates ?? [], now) : false;
		const isNews = all.length > 0 || ofReadings.isChanged || isMoved || row.named !== lake.name;
		await updateTelling(tx, lake.id, {
			...looked.look,
			named: lake.name,
			...(isNews ? { changed_at: now } : {})
		});
		const before = new Date(at.getTime() - KEPT_D * 86_400_000).toISOString();
		await deleteMessagesBefore(tx, lake.id, before);
	});
}

async function tellNews(
	tx: Kysely<Database>,
	lake: LakeRecord,
	row: TellingRow,
	facts: TellingFacts | null,
	now: string
): Promise<MessageRow[]> {
	if (!facts) return [];
	const words = wordsFor(row);
	const { told, news } = newsOf(toldOf(row), facts);
	await updateTelling(tx, lake.id, { state: JSON.stringify(told) });
	return news.map((each) => toRow(lake.id, newsMessage(each, facts, words), now));
}

/** Written by this file only; of another version, nothing counts as told. */
function toldOf({ state }: TellingRow): Told | null {
	if (state === null) return null;
	const told = JSON.parse(state) as Told;
	return told.version === 1 ? told : null;
}
