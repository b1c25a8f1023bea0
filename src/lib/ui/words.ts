import type { Words } from '#lib/model/words.ts';
import { shortDay } from './format/day.ts';
import { degreeDays, temperatureStep } from './format/degrees.ts';
import { depth, requirement, thickness } from './format/length.ts';
import { distance } from './format/distance.ts';
import { mass } from './format/mass.ts';
import type { Units } from './units-setting.ts';

/** The reader's units for the model's own sentences. */
export function wordsIn(units: Units): Words {
	return {
		thickness: (thickness_m) => thickness(thickness_m, units),
		requirement: (thickness_m) => requirement(thickness_m, units),
		depth: (depth_m) => depth(depth_m, units),
		distance: (distance_m) => distance(distance_m, units),
		mass: (mass_kg) => mass(mass_kg, units),
		step: (step_K) => temperatureStep(step_K, units),
		degreeDays: (amount_degCd) => degreeDays(amount_degCd, units),
		day: shortDay
	};
}
