import type { Units } from '../units-setting.ts';
import { grouped } from './number.ts';

const FEET_PER_M = 1 / 0.3048;
const FEET_PER_MILE = 5280;
const M_PER_KM = 1000;

/** A way on the ground, to the nearest metre or foot. @example way(1234, metric) // => '1,234 m' */
export function way(metres: number, units: Units): string {
	return units.measure === 'metric' ? `${grouped(metres)} m` : `${grouped(metres * FEET_PER_M)} ft`;
}

/** Between points, rounded down so that nobody walks too far. @example spacing(9.1, imperial) // => '29 ft' */
export function spacing(metres: number, units: Units): string {
	const HAIR = 1e-6;
	return units.measure === 'metric'
		? `${grouped(Math.floor(metres + HAIR))} m`
		: `${grouped(Math.floor(metres * FEET_PER_M + HAIR))} ft`;
}

/** The length of a scale bar: about as long as asked, a round number of its unit. */
export function roundWay(metres: number, units: Units): { way_m: number; text: string } {
	const isMetric = units.measure === 'metric';
	const small = isMetric ? 1 : 1 / FEET_PER_M;
	const big = isMetric ? M_PER_KM : FEET_PER_MILE / FEET_PER_M;
	const unit_m = metres >= big ? big : small;
	const name = metres >= big ? (isMetric ? 'km' : 'mi') : isMetric ? 'm' : 'ft';
	const number = roundNumber(metres / unit_m);
	return { way_m: number * unit_m, text: `${number.toLocaleString('en-GB')} ${name}` };
}

/** The largest of 1, 2 and 5 times a power of ten that is not above a number. */
function roundNumber(most: number): number {
	const power = 10 ** Math.floor(Math.log10(most));
	const steps = most / power;
	return (steps >= 5 ? 5 : steps >= 2 ? 2 : 1) * power;
}
