import { daysBetween, winterOf } from '#lib/model/calendar.ts';
import { ofSite } from '#lib/model/telling/closing.ts';
import { readingMessage } from '#lib/model/telling/reading-message.ts';
import type { Words } from '#lib/model/words.ts';
import type { Kysely } from 'kysely';
import { listReadingsLoggedSince } from '../../storage/readings.ts';
import type { Database } from '../../storage/schema.ts';
import {
	deleteMessage,
	listReadingMessages,
	updateMessage
} from '../../storage/telling-messages.ts';
import { listSiteRows } from '../../storage/sites.ts';
import type { LakeRecord } from '../lakes.ts';
import { localDay } from '../local-day.ts';
import { toRow } from './to-row.ts';
import type { Correction } from './webhook/correct.ts';
import type { OfSite } from './webhook/enqueue.ts';

/** A hole that is older when it is logged is history, and no news. Our choice. */
const NEWS_FOR_D = 14;

/**
 * The messages of readings, brought in line with the readings: of all sites of the lake, logged since
 * telling began. One that was put right has its message put right, one that was deleted loses it.
 */
export async function tellOfReadings(
	tx: Kysely<Database>,
	lake: LakeRecord,
	{ since, now, words }: { since: string; now: Date; words: Words }
): Promise<{ added: OfSite[]; corrections: Correction[] }> {
	const logged = await listReadingsLoggedSince(tx, lake.id, since);
	const sites = await listSiteRows(tx, lake.id);
	const siteOf = (id: string) =>
		sites.length > 1 ? (sites.find((site) => site.id === id)?.name ?? null) : null;
	const today = lake.today ?? localDay(now, lake.timeZone);
	const isNews = ({ reading, loggedAt }: (typeof logged)[number]) =>
		winterOf(reading.on) === winterOf(today) &&
		daysBetween(reading.on, lake.today ?? localDay(loggedAt, lake.timeZone)) <= NEWS_FOR_D;
	const told = new Map(
		(await listReadingMessages(tx, lake.id)).map((row) => [row.reading_id ?? '', row])
	);
	const at = now.toISOString();
	const added: OfSite[] = [];
	const corrections: Correction[] = [];
	// One that was told stays told when it is moved to a day that is no news.
	const isToBeTold = (each: (typeof logged)[number]) => isNews(each) || told.has(each.reading.id);
	for (const { reading, site } of logged.filter(isToBeTold)) {
		const message = ofSite(readingMessage(reading, words), siteOf(site));
		const before = told.get(reading.id);
		told.delete(reading.id);
		if (!before) added.push({ row: toRow(lake.id, message, at, reading.id), site });
		else if (before.title !== message.title || before.text !== message.text) {
			const { kind, title, text, on } = message;
			const change = { kind, title, text, about_day: on, changed_at: at };
			await updateMessage(tx, before.id, change);
			corrections.push({ was: before, now: { ...before, ...change }, site });
		}
	}
	const stored = new Set(logged.map(({ reading }) => reading.id));
	for (const row of told.values()) {
		if (stored.has(row.reading_id ?? '')) continue;
		await deleteMessage(tx, row.id);
		corrections.push({ was: row, now: null, site: null });
	}
	return { added, corrections };
}
