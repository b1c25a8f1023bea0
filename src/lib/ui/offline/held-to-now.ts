import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import type { ReadingsEffect } from '#lib/model/readings-effect.ts';
import { shortDay } from '../format/day.ts';

/** What is kept in the morning ends with the day before; further back it tells nothing of today. */
const MOST_BEHIND_d = 1;

/**
 * What a hole changed by the input that is kept here, as far as it may be said: no load counts as reached
 * where that input ends days before the hole, or where the page is an old copy. A warm spell may lie
 * between, and after it the ice is thinner than any input of before says.
 */
export function heldToNow<Effect extends Pick<ReadingsEffect, 'asOf' | 'loads'>>(
	effect: Effect,
	on: IsoDate,
	isOldCopy: boolean
): Effect {
	const { asOf, loads } = effect;
	if (!isOldCopy && daysBetween(asOf, on) <= MOST_BEHIND_d) return effect;
	const reason = `What is kept here ends with ${shortDay(asOf)}, and nothing counts as reached by it.`;
	return {
		...effect,
		loads: loads.map((load) => ({
			...load,
			before: notReached(load.before),
			after: notReached(load.after),
			reason: load.after === 'reached' ? reason : load.reason
		}))
	};
}

type Status = ReadingsEffect['loads'][number]['after'];

function notReached(status: Status): Status {
	return status === 'reached' ? 'expectedNotDrilled' : status;
}
