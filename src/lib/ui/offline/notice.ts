import { ago, moment } from '../format/moment.ts';

const DAY_MS = 86_400_000;

export interface Notice {
	/** Older than a day: said loudly, and no load counts as reached. */
	isOld: boolean;
	/** @example '24 Nov, 08:12' */
	since: string;
	lead: string;
	text: string;
}

/**
 * What is said at the top of a page that is not fresh: since when it stands, and what that means.
 * @param hasAnswer that the server has been heard since
 */
export function noticeOf(madeAt: Date, now: Date, timeZone: string, hasAnswer = false): Notice {
	const since = moment(madeAt, now, timeZone);
	const passed = ago(madeAt, now);
	const isOld = now.getTime() - madeAt.getTime() > DAY_MS;
	const where = hasAnswer ? 'Not fresh' : 'No connection to the server';
	return isOld
		? {
				isOld,
				since,
				lead: `Old copy, as it stood on ${since}, ${passed}.`,
				text: 'All that is said of the ice was said then. Warm hours since are not in it, and after them the ice is thinner than this says. No load counts as reached: drill, and look again where there is a connection.'
			}
		: {
				isOld,
				since,
				lead: `${where}: this page stands as it was at ${since}, ${passed}.`,
				text: 'Weather and readings since then are not in it, and every age on it has grown by as much. After warm hours the ice is thinner than it says.'
			};
}

/** The latest that this device's clock and the server's were seen to tell; 0: never. */
export interface Clocks {
	device_ms: number;
	server_ms: number;
}

/**
 * How old a kept page is at least. Of a phone's clock and a server's one may be wrong, and what makes it
 * older counts; so does what either of them has told since, where the phone's was set back after that.
 */
export function keptAge_ms(
	{ keptAt_ms, madeAt_ms }: { keptAt_ms: number; madeAt_ms: number },
	now_ms: number,
	latest: Clocks
): number {
	const isKnown = (stamp_ms: number) => Number.isFinite(stamp_ms) && stamp_ms > 0;
	const stamps = [keptAt_ms, madeAt_ms].filter(isKnown);
	if (stamps.length === 0) return Infinity;
	return Math.max(
		0,
		now_ms - Math.min(...stamps),
		isKnown(keptAt_ms) ? latest.device_ms - keptAt_ms : 0,
		isKnown(madeAt_ms) ? latest.server_ms - madeAt_ms : 0
	);
}
