import { waveSpeed_m_s } from './wave-speed.ts';

const KMH_m_s = 1 / 3.6;

/** Loaded trucks on ice. Worksite practice, as reported [R2]. */
export const LOADED_m_s = 25 * KMH_m_s;
/** Entering or leaving the ice. Worksite practice, as reported [R2]. */
export const ENTERING_m_s = 10 * KMH_m_s;
/** Near a shore, where the wave is thrown back; at an angle to it. [M-hi]; the figure is a walk's. */
export const NEAR_SHORE_m_s = 5 * KMH_m_s;

/**
 * Share of the wave's speed to keep under. Our choice: as the wave goes by the root of the depth, half
 * still holds where the water is only a quarter as deep as thought.
 */
const WAVE_SHARE = 0.5;

/**
 * Speed for a vehicle away from the shore to stay under: half of the wave's, at most that of practice.
 *
 * For wheels and tracks; thickness at its lower bound, at the thinnest of five spots.
 * @example pace_m_s(5, 0.3) // => 3.49
 */
export function pace_m_s(depth_m: number, thickness_m: number): number {
	return Math.min(LOADED_m_s, WAVE_SHARE * waveSpeed_m_s(depth_m, thickness_m));
}
