import { lengthValue } from '../format/length.ts';
import type { Units } from '../units-setting.ts';

export interface Tick {
	at_m: number;
	/** The number on it, on every second one. */
	text: string | null;
}

/** Steps of a ruler in the person's unit: the first that gives no more than a dozen. */
const STEPS = { metric: [2.5, 5, 10, 20], imperial: [1, 2, 4, 6, 12] } as const;
const MOST_TICKS = 13;

/** Marks of a ruler from zero to `length_m`, every second one numbered. */
export function rulerTicks(length_m: number, units: Units): Tick[] {
	const length = lengthValue(length_m, units);
	const step =
		STEPS[units.measure].find((candidate) => length / candidate <= MOST_TICKS) ??
		STEPS[units.measure].at(-1) ??
		1;
	const perMetre = lengthValue(1, units);
	return Array.from({ length: Math.floor(length / step + 1e-6) + 1 }, (_, index) => ({
		at_m: (index * step) / perMetre,
		text: index % 2 === 0 ? String(index * step) : null
	}));
}
