import type { IsoDate } from './calendar.ts';
import { LENGTH_STEP, steppedLength, type UnitChoice } from './shown-length.ts';
import { grouped, signed } from './shown-number.ts';
import { FAHRENHEIT_STEPS_PER_K, POUND_kg } from './units.ts';

/** How numbers enter sentences. A screen hands in its own, in the units that its reader chose. */
export interface Words {
	/** Ice as estimated or measured: rounded down. */
	thickness(thickness_m: number): string;
	/** Ice that is asked for: rounded up. */
	requirement(thickness_m: number): string;
	/** Snow or slush: to the nearest. */
	depth(depth_m: number): string;
	/** From one thing on the ice to the next, as asked for: rounded up. */
	distance(distance_m: number): string;
	mass(mass_kg: number): string;
	/** A difference of temperatures, which has no offset. */
	step(step_K: number): string;
	degreeDays(amount_degCd: number): string;
	day(on: IsoDate): string;
}

const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
const FOOT_m = 0.3048;
/** Keeps 30 m at 30 although its double may be a hair off. */
const HAIR = 1e-6;
/** Less ice than this is none. */
const LEAST_SHOWN_m = 0.001;

/** The words of somebody who chose these units. */
export function wordsFor({ measure, mass }: UnitChoice): Words {
	const isMetric = measure === 'metric';
	const steps_K = isMetric ? 1 : FAHRENHEIT_STEPS_PER_K;
	const unit = isMetric ? 'cm' : 'in';
	const length = (length_m: number, rounding: 'down' | 'up' | 'nearest') =>
		`${signed(steppedLength(length_m, measure, rounding))} ${unit}`;
	return {
		thickness: (thickness_m) =>
			thickness_m >= LEAST_SHOWN_m && steppedLength(thickness_m, measure, 'down') === 0
				? `under ${LENGTH_STEP[measure]} ${unit}`
				: length(thickness_m, 'down'),
		requirement: (thickness_m) => length(thickness_m, 'up'),
		depth: (depth_m) => length(depth_m, 'nearest'),
		// Feet to whole fives, as a person paces them.
		distance: (distance_m) =>
			isMetric
				? `${grouped(Math.ceil(distance_m - HAIR))} m`
				: `${grouped(Math.ceil(distance_m / FOOT_m / 5 - HAIR) * 5)} ft`,
		mass: (mass_kg) =>
			mass === 'kg' ? `${grouped(mass_kg)} kg` : `${grouped(mass_kg / POUND_kg)} lb`,
		step: (step_K) => `${signed(Math.round(step_K * steps_K))} ${isMetric ? '°C' : '°F'}`,
		degreeDays: (amount_degCd) =>
			`${grouped(amount_degCd * steps_K)} ${isMetric ? '°C·d' : '°F·d'}`,
		day: (on) => `${Number(on.slice(8))} ${MONTHS[Number(on.slice(5, 7)) - 1] ?? ''}`
	};
}

/** Centimetres, kilograms and °C. */
export const METRIC_WORDS: Words = wordsFor({ measure: 'metric', mass: 'kg' });

/** @example counted(1, 'hole') // => '1 hole' */
export function counted(count: number, noun: string): string {
	return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
