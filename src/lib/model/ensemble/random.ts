import { normalQuantile } from './normal.ts';

export { normalQuantile } from './normal.ts';

type State = [a: number, b: number, c: number, d: number];

/**
 * A generator of numbers above 0 and below 1, the same ones for the same seed.
 *
 * xoshiro128** [BlackmanVigna2021], its state filled from the seed by SplitMix with MurmurHash3's
 * finalizer. 2^32 different numbers, neither end among them.
 */
export function seededRandom(seed: number): () => number {
	const fill = splitMix(seed);
	const next = xoshiro128([fill(), fill(), fill(), fill()]);
	return () => (next() + 0.5) / 2 ** 32;
}

/**
 * Standard normal draws, one from each of `count` equally likely strata, in random order.
 *
 *   z = Φ⁻¹((k + u) / count)
 *
 * Their mean and spread are far closer to 0 and 1 than those of as many free draws [McKay1979].
 */
export function normalDraws(count: number, random: () => number): Float64Array {
	const draws = new Float64Array(count);
	for (let k = 0; k < count; k++) draws[k] = normalQuantile((k + random()) / count);
	return shuffle(draws, random);
}

/** Whole numbers below 2^32 from a state that is not all zero. */
export function xoshiro128(state: Readonly<State>): () => number {
	let [a, b, c, d] = state;
	return () => {
		const result = Math.imul(rotated(Math.imul(b, 5), 7), 9) >>> 0;
		const shifted = b << 9;
		c ^= a;
		d ^= b;
		b ^= c;
		a ^= d;
		c ^= shifted;
		d = rotated(d, 11);
		return result;
	};
}

function rotated(bits: number, by: number): number {
	return (bits << by) | (bits >>> (32 - by));
}

function splitMix(seed: number): () => number {
	let state = seed | 0;
	return () => {
		state = (state + 0x9e3779b9) | 0;
		let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
		mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
		return (mixed ^ (mixed >>> 16)) >>> 0;
	};
}

/** Fisher and Yates, in place. */
function shuffle(values: Float64Array, random: () => number): Float64Array {
	for (let i = values.length - 1; i > 0; i--) {
		const j = Math.floor(random() * (i + 1));
		const kept = values[i] ?? 0;
		values[i] = values[j] ?? 0;
		values[j] = kept;
	}
	return values;
}
