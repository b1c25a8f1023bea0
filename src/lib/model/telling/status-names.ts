import type { LoadStatus } from '../forecast.ts';

/** A status inside a sentence. Never a permission. */
export const STATUS_NAMES: Record<LoadStatus, string> = {
	notYet: 'not yet',
	expectedNotDrilled: 'expected, not drilled',
	reached: 'chart minimum reached, drilled',
	withheld: 'withheld, stay off',
	askAnEngineer: 'ask an ice engineer'
};
