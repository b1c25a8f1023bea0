import type { LoadStatus } from '#lib/model/forecast.ts';

/** How each status is said. Never a permission. */
export const STATUS_WORDS: Record<LoadStatus, string> = {
	notYet: 'Not yet',
	expectedNotDrilled: 'Expected, not drilled',
	reached: 'Chart minimum reached, drilled',
	withheld: 'Withheld: stay off',
	askAnEngineer: 'Ask an ice engineer'
};
