import type { Forcing } from './forcing.ts';
import type { Parameters } from './parameters.ts';

/** Mean frost from which the sky is taken as clear as it usually is in frost, K. Our choice. */
const CLEARING_K = 1;

/**
 * Frost at the surface: that of the air, and in the freezing hours what a surface that loses heat to
 * the sky takes besides, less the sun that snow takes up.
 *
 *   F + (R_sky - (1 - a) c S)/H × freezing hours, not below zero
 *
 * As if the air were colder by some tenths of a degree to two degrees in the dark of the winter, and
 * warmer in the sun of spring. A linear surface balance [M-med]. What it adds shrinks in proportion to
 * a mean frost of less than {@link CLEARING_K}: air that stays close to zero is under cloud, which
 * sends back what the surface loses [M-lo]. It makes no frost where the air has none.
 */
export function surfaceFrost_degCd(forcing: Forcing, p: Parameters): number {
	if (forcing.freezing_degCd <= 0) return 0;
	const sun_W_m2 = (1 - p.snowAlbedo) * p.cloudFraction * forcing.sun_W_m2;
	const colder_K = (p.skyLoss_W_m2 - sun_W_m2) / p.exchange_W_m2K;
	const time_d = (1 - forcing.warmFraction) * forcing.duration_d;
	const added_degCd = colder_K * time_d;
	if (added_degCd <= 0) return Math.max(0, forcing.freezing_degCd + added_degCd);
	const clearFraction = Math.min(1, forcing.freezing_degCd / (CLEARING_K * time_d));
	return forcing.freezing_degCd + added_degCd * clearFraction;
}
