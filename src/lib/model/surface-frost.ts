import type { Forcing } from './forcing.ts';
import type { Parameters } from './parameters.ts';

/**
 * Frost at the surface: that of the air, and in the freezing hours what a surface that loses heat to
 * the sky takes besides, less the sun that snow takes up.
 *
 *   F + (R_sky - (1 - a) c S)/H × freezing hours, not below zero
 *
 * As if the air were colder by some tenths of a degree to two degrees in the dark of the winter, and
 * warmer in the sun of spring. A linear surface balance [M-med]; it makes no frost where the air has none.
 */
export function surfaceFrost_degCd(forcing: Forcing, p: Parameters): number {
	if (forcing.freezing_degCd <= 0) return 0;
	const sun_W_m2 = (1 - p.snowAlbedo) * p.cloudFraction * forcing.sun_W_m2;
	const colder_K = (p.skyLoss_W_m2 - sun_W_m2) / p.exchange_W_m2K;
	const time_d = (1 - forcing.warmFraction) * forcing.duration_d;
	return Math.max(0, forcing.freezing_degCd + colder_K * time_d);
}
