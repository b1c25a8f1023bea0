import type { Context } from '../../context.ts';
import type { FeedKind } from '../../storage/telling-schema.ts';
import { listDateRows } from '../../storage/telling-dates.ts';
import { listMessages } from '../../storage/telling-messages.ts';
import { changesText } from './atom/changes.ts';
import { calendarText } from './calendar/calendar.ts';
import { FEED_FILES, openFeed } from './feeds.ts';
import { toldName } from './told-name.ts';

export interface FeedText {
	text: string;
	type: string;
	/** When anything of it last changed. */
	changedAt: Date;
}

/** Changes that a feed has at most. */
const MOST_ENTRIES = 100;

/**
 * A feed as it is sent. `origin` is where it was asked for, and stands for the app's address where that
 * is not set.
 * @throws FeedNotFound
 */
export async function feedText(
	ctx: Context,
	kind: FeedKind,
	secret: string,
	origin: string
): Promise<FeedText> {
	const { lake: record, telling, feed } = await openFeed(ctx, kind, secret);
	const lake = { id: record.id, name: toldName(record) };
	const base = ctx.address ?? origin;
	const changed = telling.changed_at > feed.made_at ? telling.changed_at : feed.made_at;
	if (kind === 'calendar') {
		const dates = await listDateRows(ctx.db, lake.id);
		const text = calendarText({ lake, dates, base });
		return { text, type: 'text/calendar; charset=utf-8', changedAt: new Date(changed) };
	}
	const text = changesText({
		lake,
		messages: await listMessages(ctx.db, lake.id, MOST_ENTRIES),
		changedAt: changed,
		feedMadeAt: feed.made_at,
		base,
		self: `${base}/feeds/${secret}/${FEED_FILES[kind]}`
	});
	return { text, type: 'application/atom+xml; charset=utf-8', changedAt: new Date(changed) };
}
