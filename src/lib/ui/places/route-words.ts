import type { RouteAnswer, RouteStatus } from '#lib/model/places/route-answer.ts';
import { thickness } from '../format/length.ts';
import { STATUS_WORDS } from '../status-words.ts';
import type { Units } from '../units-setting.ts';

export const ROUTE_STATUS_WORDS: Record<RouteStatus, string> = {
	...STATUS_WORDS,
	notKnown: 'Not known'
};

/** More names than these make no sentence. */
const MOST_NAMED = 3;

/** What a route carries, as its weakest known point has it. */
export function routeSentence(answer: RouteAnswer, units: Units): string {
	const { points, unknown, weakest } = answer;
	if (unknown.length > 0) {
		const names = unknown.map((index) => points[index]?.name ?? '');
		return `Not known to carry anything: nothing is known of ${listed(names)}.`;
	}
	const point = weakest === null ? undefined : points[weakest];
	if (!point) return 'Not known to carry anything.';
	const by = point.by === 'holes' ? 'by its own holes' : 'by the lower bound for vehicles';
	return `Its weakest known point is ${point.name}, which counts as ${thickness(point.effective_m, units)} ${by}.`;
}

/** @example listed(['A', 'B', 'C', 'D']) // => 'A, B, C and 1 more' */
export function listed(names: readonly string[]): string {
	const told = names.slice(0, MOST_NAMED);
	if (names.length > MOST_NAMED) return `${told.join(', ')} and ${names.length - MOST_NAMED} more`;
	return told.length < 2 ? (told[0] ?? '') : `${told.slice(0, -1).join(', ')} and ${told.at(-1)}`;
}
