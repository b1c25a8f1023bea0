import type { Units } from '../units-setting.ts';
import { grouped } from './number.ts';

const FEET_PER_M = 1 / 0.3048;
/** Keeps 30 m at 30 although its double may be a hair off. */
const HAIR = 1e-6;

/** A distance to keep, rounded up; feet to whole fives, as a person paces them. @example distance(15, imperial) // => '50 ft' */
export function distance(metres: number, units: Units): string {
	return units.measure === 'metric'
		? `${grouped(Math.ceil(metres - HAIR))} m`
		: `${grouped(Math.ceil((metres * FEET_PER_M) / 5 - HAIR) * 5)} ft`;
}

/** Depth of water, to the nearest. @example depthOfWater(6.5, metric) // => '6.5 m' */
export function depthOfWater(metres: number, units: Units): string {
	return units.measure === 'metric'
		? `${Number(metres.toFixed(1))} m`
		: `${grouped(metres * FEET_PER_M)} ft`;
}
