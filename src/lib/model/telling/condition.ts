import { daysBetween, type IsoDate } from '../calendar.ts';
import { hasMoved } from './moved.ts';

/** A condition must have been gone for so long before it is told as a new one. Our choice. */
const FORGOTTEN_AFTER_d = 3;

/** A condition that was told: a thaw or flood ahead, an overdue reading, stale weather. */
export interface ToldCondition {
	/** The day that it was told to begin. */
	from: IsoDate;
	/** Since when it has been gone again; `null` while it stands. */
	goneOn: IsoDate | null;
}

export interface ConditionNews {
	told: ToldCondition | null;
	isNews: boolean;
	/** The day that it was told to begin before. */
	before: IsoDate | null;
}

/**
 * Whether a condition is told: when it appears, when the day that it begins has moved ({@link hasMoved}),
 * and when it has begun before the day that was told.
 *
 * That it has gone is not told: good news waits for whoever looks. Gone for less than three days, it is
 * still the same one, so that a condition that comes and goes is told once.
 */
export function conditionNews(
	told: ToldCondition | null,
	from: IsoDate | null,
	today: IsoDate
): ConditionNews {
	const still = told !== null && isForgotten(told, today) ? null : told;
	if (from === null) {
		const gone = still && { ...still, goneOn: still.goneOn ?? today };
		return { told: gone, isNews: false, before: null };
	}
	if (still === null) return { told: { from, goneOn: null }, isNews: true, before: null };
	const hasBegunSooner = from <= today && still.from > today;
	const isNews = hasBegunSooner || hasMoved(still.from, from, today);
	const kept = isNews ? from : still.from;
	return { told: { from: kept, goneOn: null }, isNews, before: isNews ? still.from : null };
}

function isForgotten({ goneOn }: ToldCondition, today: IsoDate): boolean {
	return goneOn !== null && daysBetween(goneOn, today) >= FORGOTTEN_AFTER_d;
}
