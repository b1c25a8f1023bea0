import { LENGTH_STEP, shownLength, steppedLength } from '#lib/model/shown-length.ts';
import type { Units } from '../units-setting.ts';
import { signed, UNKNOWN } from './number.ts';

const INCHES_PER_M = 1 / 0.0254;
/** Less ice than this is none. */
const LEAST_SHOWN_m = 0.001;

/** Ice as estimated or measured, rounded down. @example thickness(0.319, metric) // => '31 cm' */
export function thickness(metres: number | null, units: Units): string {
	const number = thicknessNumber(metres, units);
	const isSliver = number === '0' && metres !== null && metres >= LEAST_SHOWN_m;
	return isSliver
		? `under ${withUnit(String(LENGTH_STEP[units.measure]), units)}`
		: withUnit(number, units);
}

/** The same without its unit. */
export function thicknessNumber(metres: number | null, units: Units): string {
	return metres === null ? UNKNOWN : lengthNumber(metres, units, 'down');
}

/** Ice that a chart asks for, rounded up. @example requirement(0.151, metric) // => '16 cm' */
export function requirement(metres: number | null, units: Units): string {
	return withUnit(requirementNumber(metres, units), units);
}

/** The same without its unit. */
export function requirementNumber(metres: number | null, units: Units): string {
	return metres === null ? UNKNOWN : lengthNumber(metres, units, 'up');
}

/** Snow, slush or water level, to the nearest. */
export function depth(metres: number | null, units: Units): string {
	return withUnit(depthNumber(metres, units), units);
}

/** The same without its unit. */
export function depthNumber(metres: number | null, units: Units): string {
	return metres === null ? UNKNOWN : lengthNumber(metres, units, 'nearest');
}

/** Growth or loss in a day, without its sign. @example rate(-0.008, metric) // => '8 mm a day' */
export function rate(metres: number, units: Units): string {
	const amount = Math.abs(metres);
	return units.measure === 'metric'
		? `${Math.round(amount * 1000)} mm a day`
		: `${(amount * INCHES_PER_M).toFixed(1)} in a day`;
}

/** A length as a bare number in the person's unit, unrounded: for scales and drawings. */
export function lengthValue(metres: number, units: Units): number {
	return shownLength(metres, units.measure);
}

export function lengthUnit(units: Units): 'cm' | 'in' {
	return units.measure === 'metric' ? 'cm' : 'in';
}

/** The unit in a heading. */
export function lengthName(units: Units): string {
	return units.measure === 'metric' ? 'cm' : 'inches';
}

function lengthNumber(metres: number, units: Units, rounding: 'down' | 'up' | 'nearest'): string {
	return signed(steppedLength(metres, units.measure, rounding));
}

function withUnit(number: string, units: Units): string {
	return number === UNKNOWN ? UNKNOWN : `${number} ${lengthUnit(units)}`;
}
