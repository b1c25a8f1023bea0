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

/** The later of two clocks counts against what is kept: of a phone's and a server's, one may be wrong. */
export function ageOf_ms(stamps_ms: readonly number[], now_ms: number): number {
	const known = stamps_ms.filter((stamp) => Number.isFinite(stamp) && stamp > 0);
	return known.length === 0 ? Infinity : Math.max(0, now_ms - Math.min(...known));
}
