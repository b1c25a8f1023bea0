import type { Context } from '../../context.ts';
import { forgetAhead, listAhead } from '../../storage/ahead.ts';
import { SLACK_MS } from '../../storage/set-right.ts';
import { localDay } from '../local-day.ts';
import { logEvent } from '../log.ts';

/**
 * Lets go of observations of a time to come: they came while this machine's clock was ahead, by which
 * what was forecast passed for over and its age for none. It is asked for anew at once.
 */
export async function forgetWhatIsAhead(ctx: Context): Promise<void> {
	const now = ctx.now();
	for (const ahead of await listAhead(ctx.db, now)) {
		const { lastHourAt_s, lastDay, timeZone } = ahead;
		const isHourAhead = (lastHourAt_s ?? 0) + 3600 > (now.getTime() + SLACK_MS) / 1000;
		const dayAfter = localDay(new Date(now.getTime() + SLACK_MS), timeZone);
		if (!isHourAhead && (lastDay ?? '') < dayAfter) continue;
		const today = localDay(now, timeZone);
		await ctx.db.transaction().execute((tx) => forgetAhead(tx, ahead, { now, today }));
		logEvent('clock', { lake: ahead.lakeId, use: ahead.lakeSourceId, isSetBack: true });
	}
}
