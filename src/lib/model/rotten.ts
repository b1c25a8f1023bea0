import type { IceColumn } from './column.ts';
import type { Reading } from './reading.ts';

/**
 * Liquid fraction from which ice counts as rotten: half its strength is gone.
 *
 *   σ/σ0 = (1 - √(n/0.6))² = 0.51 at n = 0.05
 *
 * Source: [Bulatov1970] [M-med]. The whole thickness rules keep silent about it; our choice.
 */
export const ROTTEN = 0.05;

const LIQUID_WET = 0.1; // a third of the strength left by [Bulatov1970]
const LIQUID_CANDLED = 0.3; // a tenth of the strength left by [Bulatov1970]

/** Liquid fraction that cores show at least, by the worst of them; `null` where none is wet or candled. */
export function leastLiquid(cores: readonly Reading['core'][]): number | null {
	if (cores.includes('candled')) return LIQUID_CANDLED;
	return cores.includes('wet') ? LIQUID_WET : null;
}

/** The estimate of it in a sentence. */
export function rottenText(column: IceColumn): string {
	const percent = Math.round(column.liquidFraction * 100);
	return `about ${percent} % of the ice is estimated to be water, so it carries half of what its thickness says, or less.`;
}
