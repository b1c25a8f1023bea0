import { effective_m } from '../bearing.ts';
import type { Members } from './members.ts';
import { normalDraws } from './random.ts';
import { spotFraction, TAPE_m } from './scatter.ts';

const SNOW_FRACTION = 0.4; // drifts of 5 to 20 m wavelength [R] [Sturm2003]; size [M-lo]
const SPOTS = 5;

/** Each member's own random spot, and the thinnest of its five, as standard normal deviates. */
export interface Spots {
	readonly ice: Float64Array;
	readonly tape: Float64Array;
	readonly snow: Float64Array;
	readonly thinnest: Float64Array;
}

export function drawSpots(count: number, random: () => number): Spots {
	const five = Array.from({ length: SPOTS }, () => normalDraws(count, random));
	return {
		ice: normalDraws(count, random),
		tape: normalDraws(count, random),
		snow: normalDraws(count, random),
		thinnest: Float64Array.from({ length: count }, (_, i) =>
			Math.min(...five.map((deviates) => deviates[i] ?? 0))
		)
	};
}

/** What holes would show, a member a value. */
export interface Holes {
	readonly clear_m: Float64Array;
	readonly white_m: Float64Array;
	readonly snow_m: Float64Array;
	readonly slush_m: Float64Array;
	readonly total_m: Float64Array;
	readonly effective_m: Float64Array;
	/** Effective thickness at the thinnest of five spots. */
	readonly thinnest_m: Float64Array;
}

export function emptyHoles(count: number): Holes {
	const zeros = () => new Float64Array(count);
	return {
		clear_m: zeros(),
		white_m: zeros(),
		snow_m: zeros(),
		slush_m: zeros(),
		total_m: zeros(),
		effective_m: zeros(),
		thinnest_m: zeros()
	};
}

/** Drills every member at its own spot: all its layers are thicker or thinner there by one share. */
export function drill(members: Members, spots: Spots, holes: Holes): void {
	for (let i = 0; i < members.count; i++) {
		const clear_m = members.clear_m[i] ?? 0;
		const white_m = members.white_m[i] ?? 0;
		const total_m = clear_m + white_m;
		const tape = total_m > 0 ? (TAPE_m / total_m) * (spots.tape[i] ?? 0) : 0;
		const scatter = spotFraction(total_m);
		const here = Math.max(0, 1 + scatter * (spots.ice[i] ?? 0) + tape);
		holes.clear_m[i] = clear_m * here;
		holes.white_m[i] = white_m * here;
		holes.total_m[i] = total_m * here;
		const sound_m = effective_m({ clear_m, white_m });
		holes.effective_m[i] = sound_m * here;
		const thinnest = Math.max(0, 1 + scatter * (spots.thinnest[i] ?? 0));
		holes.thinnest_m[i] = sound_m * thinnest;
		const drift = Math.max(0, 1 + SNOW_FRACTION * (spots.snow[i] ?? 0));
		holes.snow_m[i] = (members.snow_m[i] ?? 0) * drift;
		holes.slush_m[i] = (members.slush_m[i] ?? 0) * drift;
	}
}
