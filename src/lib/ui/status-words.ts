import type { LoadStatus } from '#lib/model/forecast.ts';
import { asItStood } from './offline/standing.svelte.ts';

/** How each status is said. Never a permission. */
export const STATUS_WORDS: Record<LoadStatus, string> = {
	notYet: 'Not yet',
	expectedNotDrilled: 'Expected, not drilled',
	reached: 'Chart minimum reached, drilled',
	withheld: 'Withheld: stay off',
	askAnEngineer: 'Ask an ice engineer'
};

/** The same where a row says already that it is about the chart minimum. */
export const ROW_WORDS: Record<LoadStatus, string> = {
	...STATUS_WORDS,
	reached: 'Reached, drilled'
};

/** Whether the ice is closed to every load that the tool may speak of. */
export function isAllWithheld(loads: readonly { status: LoadStatus }[]): boolean {
	const told = loads.filter(({ status }) => status !== 'askAnEngineer');
	return told.length > 0 && told.every(({ status }) => status === 'withheld');
}

/** How a status is said on a page that may be an old copy. */
export function statusSaid(status: LoadStatus, words = STATUS_WORDS): string {
	return asItStood(status) || words[status];
}
