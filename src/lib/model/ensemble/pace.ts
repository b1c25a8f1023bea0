import { normalDraws } from './random.ts';

/** How long a spell of growing faster or slower than the weather says lasts. Fitted with the spread. */
const MEMORY_d = 5;
const FROST_SPREAD = 0.45; // of the logarithm, from the scatter of growth between readings [C]
const THAW_SPREAD = 0.5;
const POOL = 4096; // draws that the days share, each day from another place and in another order

/**
 * What the daily weather does not say of frost and thaw at the ice: wind, cloud, drifting snow.
 *
 *   factor = exp(s g - s²/4),  g a first-order autoregressive process of unit variance
 *
 * Each member freezes and thaws at its own pace, which changes over some days. Without it members
 * would agree too well on the growth between two readings.
 */
export interface Paces {
	readonly frost: Float64Array;
	readonly thaw: Float64Array;
	readonly pool: Float64Array;
	readonly random: () => number;
}

export function drawPaces(count: number, random: () => number): Paces {
	return {
		frost: normalDraws(count, random),
		thaw: normalDraws(count, random),
		pool: normalDraws(POOL, random),
		random
	};
}

/** Moves every member's paces on by a day. */
export function advancePaces(paces: Paces): void {
	advance(paces.frost, paces);
	advance(paces.thaw, paces);
}

/** How much faster than the weather says each member freezes. */
export function frostFactors({ frost }: Paces): Float64Array {
	return factors(frost, FROST_SPREAD);
}

/** How much faster each thaws. */
export function thawFactors({ thaw }: Paces): Float64Array {
	return factors(thaw, THAW_SPREAD);
}

function factors(pace: Float64Array, spread: number): Float64Array {
	const all = new Float64Array(pace.length);
	for (let i = 0; i < all.length; i++) all[i] = Math.exp(spread * (pace[i] ?? 0) - spread ** 2 / 4);
	return all;
}

const KEPT = Math.exp(-1 / MEMORY_d);
const FRESH = Math.sqrt(1 - KEPT ** 2);

function advance(pace: Float64Array, { pool, random }: Paces): void {
	let at = Math.floor(random() * POOL);
	// An odd stride visits every place of the pool once before it repeats.
	const stride = 2 * Math.floor(random() * (POOL / 2)) + 1;
	for (let i = 0; i < pace.length; i++) {
		pace[i] = KEPT * (pace[i] ?? 0) + FRESH * (pool[at] ?? 0);
		at = (at + stride) % POOL;
	}
}
