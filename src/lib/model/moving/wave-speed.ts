import { GRAVITY_m_s2, WATER_kg_m3 } from '../constants.ts';
import { shallowWave_m_s, stiffness_Nm } from '../ice-plate.ts';

/** Wave numbers looked through: from waves of 6 km to such as are shorter than ice is thick. */
const LONGEST_1_m = 1e-3;
const SHORTEST_1_m = 1e2;
/** Bisections of the logarithm, far finer than any speed on ice. */
const ROUNDS = 60;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Speed at which the wave under the ice runs with a vehicle and the ice is stressed most.
 *
 *   c = min over κ of √((g/κ + D κ³/ρ_w) tanh κd)
 *
 * Elastic, no snow, water of one depth; over shallow water √(g d). Falls with the depth and the
 * thickness, so that the shallower and the thinner is the careful side. Zero without water.
 * Source: [Squire1996] [M-hi]. @example waveSpeed_m_s(5, 0.3) // => 6.98
 */
export function waveSpeed_m_s(depth_m: number, thickness_m: number): number {
	if (depth_m <= 0) return 0;
	const stiffness = stiffness_Nm(Math.max(0, thickness_m));
	const speed_m_s = (logK: number): number => {
		const k = Math.exp(logK);
		const restoring = GRAVITY_m_s2 / k + (stiffness * k ** 3) / WATER_kg_m3;
		return Math.sqrt(restoring * Math.tanh(k * depth_m));
	};
	const least_m_s = leastOf(speed_m_s, Math.log(LONGEST_1_m), Math.log(SHORTEST_1_m));
	return Math.min(least_m_s, shallowWave_m_s(depth_m));
}

/** Golden-section search of a curve with one valley. */
function leastOf(curve: (x: number) => number, from: number, to: number): number {
	let [low, high] = [from, to];
	for (let round = 0; round < ROUNDS; round++) {
		const step = GOLDEN * (high - low);
		if (curve(high - step) < curve(low + step)) high = low + step;
		else low = high - step;
	}
	return curve((low + high) / 2);
}
