import type { IceColumn } from './column.ts';

/**
 * Liquid fraction from which ice counts as rotten: half its strength is gone.
 *
 *   σ/σ0 = (1 - √(n/0.6))² = 0.51 at n = 0.05
 *
 * Source: [Bulatov1970] [M-med]. The whole thickness rules keep silent about it; our choice.
 */
export const ROTTEN = 0.05;

/** The estimate of it in a sentence. */
export function rottenText(column: IceColumn): string {
	const percent = Math.round(column.liquidFraction * 100);
	return `about ${percent} % of the ice is estimated to be water, so it carries half of what its thickness says, or less.`;
}
