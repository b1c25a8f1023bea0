import type { Forcing } from './forcing.ts';
import type { Parameters } from './parameters.ts';
import { unsettledFraction } from './snow.ts';
import { snowWarmth } from './snow-warmth.ts';

/** What a step's length and its air alone decide: worked out once for all members of an ensemble. */
export interface StepRates {
	/** Of what snow is short of its settled density, the part that is left. */
	readonly unsettledFraction: number;
	/** Of the water that is on its way up to overloaded snow, the part that arrives. */
	readonly arrivedFraction: number;
	/** How much better the snow conducts than the law says, by its warmth. */
	readonly snowWarmth: number;
}

/** Parameters that the rates go by. Members share them. */
export type RateParameters = Pick<Parameters, 'settling_h' | 'settlingCold_1_K' | 'flooding_d'>;

/** Rates of one step. Settling slows in the cold: τ' = τ exp(c |T|). */
export function stepRates(
	{ air_degC, duration_d }: Pick<Forcing, 'air_degC' | 'duration_d'>,
	{ settling_h, settlingCold_1_K, flooding_d }: RateParameters
): StepRates {
	const slowing = Math.exp(settlingCold_1_K * Math.max(0, -air_degC));
	return {
		unsettledFraction: unsettledFraction(settling_h * slowing, duration_d * 24),
		arrivedFraction: 1 - Math.exp(-duration_d / flooding_d),
		snowWarmth: snowWarmth(air_degC)
	};
}

/** Rates of a day in so many equal steps, and in twice as many. */
export interface DayRates {
	readonly steps: number;
	readonly coarse: StepRates;
	readonly fine: StepRates;
}

/** Times as many steps where a step can be the end of a layer. */
export const FINER = 2;

export function dayRates(day: Forcing, parameters: RateParameters, steps: number): DayRates {
	const of = (parts: number) =>
		stepRates({ air_degC: day.air_degC, duration_d: day.duration_d / parts }, parameters);
	return { steps, coarse: of(steps), fine: of(FINER * steps) };
}
