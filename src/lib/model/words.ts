import type { IsoDate } from './calendar.ts';

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
/** Keeps 0.15 m at 15 cm although its double is a hair off. */
const HAIR = 1e-6;

/** Centimetres, kilograms and °C. */
export const METRIC_WORDS: Words = {
	thickness: (thickness_m) => `${Math.floor(thickness_m * 100 + HAIR)} cm`,
	requirement: (thickness_m) => `${Math.ceil(thickness_m * 100 - HAIR)} cm`,
	depth: (depth_m) => `${Math.round(depth_m * 100)} cm`,
	distance: (distance_m) => `${Math.ceil(distance_m - HAIR)} m`,
	mass: (mass_kg) => `${Math.round(mass_kg)} kg`,
	step: (step_K) => `${Math.round(step_K)} °C`,
	degreeDays: (amount_degCd) => `${Math.round(amount_degCd)} °C·d`,
	day: (on) => `${Number(on.slice(8))} ${MONTHS[Number(on.slice(5, 7)) - 1] ?? ''}`
};

/** @example counted(1, 'hole') // => '1 hole' */
export function counted(count: number, noun: string): string {
	return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
