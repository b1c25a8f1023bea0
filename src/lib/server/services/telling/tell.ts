import type { Kysely } from 'kysely';
import type { TellingFacts } from '#lib/model/telling/facts.ts';
import { tellingDates, type TellingDate } from '#lib/model/telling/dates.ts';
import { newsMessage } from '#lib/model/telling/news-message.ts';
import { newsOf, type Told } from '#lib/model/telling/told.ts';
import { wordsFor, type Words } from '#lib/model/words.ts';
import type { Context } from '../../context.ts';
import type { Database } from '../../storage/schema.ts';
import { deleteMessagesBefore, insertMessages } from '../../storage/telling-messages.ts';
import { findTelling, updateTelling, type TellingRow } from '../../storage/telling.ts';
import { nextTurn } from '../next-turn.ts';
import type { LakeRecord } from '../lakes.ts';
import { storeDates } from './store-dates.ts';
import { toRow } from './to-row.ts';
import { dateKey, storedTold, toldBySite } from './told-sites.ts';
import { tellOfReadings } from './tell-of-readings.ts';
import { enqueueCorrections } from './webhook/correct.ts';
import { enqueueMessages, type OfSite } from './webhook/enqueue.ts';

export interface LookedSite {
	site: string;
	/** `null` where the winter that it is has nothing on record yet: no day of another is shown any more. */
	facts: TellingFacts | null;
	isEstimated: boolean;
}

export interface Looked {
	/** Those that are told of; of any other nothing counts as told. */
	sites: readonly LookedSite[];
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
		const messages = await tellNews(tx, lake, row, looked.sites, now);
		const ofReadings = await tellOfReadings(tx, lake, {
			since: row.since_at,
			now: at,
			words: wordsFor(row)
		});
		const all = [...messages, ...ofReadings.added];
		await insertMessages(
			tx,
			all.map(({ row: told }) => told)
		);
		await enqueueCorrections(tx, ctx, lake, ofReadings.corrections);
		await enqueueMessages(tx, ctx, lake, all);
		const isMoved = await storeDates(tx, lake.id, datesOf(looked.sites, wordsFor(row)), now);
		const isNews =
			all.length > 0 || ofReadings.corrections.length > 0 || isMoved || row.named !== lake.name;
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
	sites: readonly LookedSite[],
	now: string
): Promise<OfSite[]> {
	const words = wordsFor(row);
	const before = toldBySite(row);
	const after: Record<string, Told | undefined> = {};
	const messages: OfSite[] = [];
	for (const { site, facts } of sites) {
		after[site] = before[site];
		if (!facts) continue;
		const { told, news } = newsOf(before[site] ?? null, facts);
		after[site] = told;
		messages.push(
			...news.map((each) => ({
				row: toRow(lake.id, newsMessage(each, facts, words), now),
				// The weather is the lake's.
				site: each.kind === 'weatherStale' ? null : site
			}))
		);
	}
	await updateTelling(tx, lake.id, { state: storedTold(after) });
	return messages;
}

function datesOf(sites: readonly LookedSite[], words: Words): TellingDate[] {
	return sites.flatMap(({ site, facts }) =>
		facts === null
			? []
			: tellingDates(facts, words).map((date) => ({ ...date, key: dateKey(site, date.key) }))
	);
}
