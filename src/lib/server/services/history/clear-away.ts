import type { Context } from '../../context.ts';
import { deleteForGood } from '../../storage/deleted.ts';
import { logFailure } from '../failure.ts';
import { logEvent } from '../log.ts';

/** For so long whatever was deleted can be brought back. */
export const DELETED_KEPT_D = 30;

const DAY_MS = 86_400_000;
const ROUND_MS = 6 * 3_600_000;
/** Pages are served first. */
const FIRST_ROUND_MS = 60_000;

/** What was deleted before that can be brought back no more, as ISO text. */
export function goesForGood({ now }: Pick<Context, 'now'>): string {
	return new Date(now().getTime() - DELETED_KEPT_D * DAY_MS).toISOString();
}

/** Lets go for good what was deleted longer ago than that. */
export async function clearAway(ctx: Context): Promise<void> {
	const gone = await deleteForGood(ctx.db, goesForGood(ctx));
	if (gone > 0) logEvent('cleared away', { gone });
}

/** Does so now and then while the app runs. */
export function startClearing(ctx: Context): { stop: () => void } {
	const round = () =>
		void clearAway(ctx).catch((cause: unknown) => logFailure('clearing away', cause));
	const first = setTimeout(round, FIRST_ROUND_MS).unref();
	const timer = setInterval(round, ROUND_MS).unref();
	return {
		stop() {
			clearTimeout(first);
			clearInterval(timer);
		}
	};
}
