import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import type { ClearingPlan } from '#lib/model/tracks/clearing-plan.ts';
import { day, shortDay, span } from './format/day.ts';
import { depth } from './format/length.ts';
import type { Units } from './units-setting.ts';
import type { IfAnswer, IfLoad } from './what-if/answer.ts';

/** The plan in words. @example planWords(plan, metric) // => 'Cleared on 16 Jan 2027 to 0 cm, …' */
export function planWords({ from, left_m, afterSnow_m }: ClearingPlan, units: Units): string {
	const first = `Cleared on ${day(from)} down to ${depth(left_m, units)} of snow`;
	return afterSnow_m === null
		? `${first}, and not again.`
		: `${first}, and again each morning that finds more than ${depth(afterSnow_m, units)} of new snow on it.`;
}

/** What the plan does for one load: the dates that decide, and how far they move. Never a permission. */
export function planSentence(asIs: IfAnswer, cleared: IfAnswer, loadId: string): string | null {
	const [before, after] = [asIs, cleared].map(({ loads }) => loads.find(({ id }) => id === loadId));
	if (!before || !after) return null;
	if (before.required_m === null) return `${before.name}: only an ice engineer can say.`;
	if (!asIs.snowKnown)
		return `${before.name}: no dates are named while the snow on the ice is not known.`;
	return `${before.name}: ${datesMoved(before, after)}${endMoved(before, after)}.`;
}

function datesMoved(before: IfLoad, after: IfLoad): string {
	const isLikely = before.likelyFrom !== null || after.likelyFrom !== null;
	const word = isLikely ? 'likely' : 'expected';
	const [was, is] = isLikely
		? [before.likelyFrom, after.likelyFrom]
		: [before.expectedFrom, after.expectedFrom];
	if (was === null && is === null) return 'on no day expected, cleared or not';
	if (was === null)
		return `${word} from ${shortDay(is ?? '')} if it is cleared, and on no day as it is`;
	if (is === null) return `${word} from ${shortDay(was)} as it is, and on no day if it is cleared`;
	return was === is
		? `${word} from ${shortDay(is)}, cleared or not`
		: `${word} from ${shortDay(is)} instead of ${shortDay(was)}, ${moved(was, is)}`;
}

/** Bare ice goes sooner, which is the price. */
function endMoved({ until: was }: IfLoad, { until: is }: IfLoad): string {
	if (was === null || is === null || was === is) return '';
	return `; it ends on ${shortDay(is)} instead of ${shortDay(was)}`;
}

function moved(was: IsoDate, is: IsoDate): string {
	const days = daysBetween(was, is);
	return `${span(Math.abs(days))} ${days < 0 ? 'sooner' : 'later'}`;
}
