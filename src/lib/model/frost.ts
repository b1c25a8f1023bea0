import { grownClear_m } from './conduction.ts';
import { CLEAR_ICE_FUSION_J_m3, DAY_s, WHITE_ICE_W_mK } from './constants.ts';
import type { Forcing } from './forcing.ts';
import type { Parameters } from './parameters.ts';
import type { SiteIce } from './site-ice.ts';
import { frostToFreeze_degCd, frozenSlush_m, waterFraction, whiteFromSlush_m } from './slush.ts';
import { landSnow_W_mK, type Snow } from './snow.ts';
import type { StepRates } from './step-rates.ts';
import { surfaceFrost_degCd } from './surface-frost.ts';

/** Gauss points of a step: where two samples stand best for what changes evenly across it. */
const EARLY = 0.5 - Math.sqrt(3) / 6;
const LATE = 0.5 + Math.sqrt(3) / 6;

/**
 * Spends a step's frost: slush first, then water inside the ice, then growth at the bottom, less
 * what the lake's own heat melts there.
 *
 * The resistance of the snow runs evenly from what it was before the step to what it is now. Growth
 * takes it at two Gauss points, half the frost at each; the lake's heat acts half before and half
 * after. Slush takes its mean. `thinSnowFraction` of the lake grows under thinner snow.
 */
export function freeze(
	ice: SiteIce,
	first_m2K_W: number,
	forcing: Forcing,
	{ snowWarmth }: Pick<StepRates, 'snowWarmth'>,
	p: Parameters
): void {
	const film_m2K_W = 1 / p.exchange_W_m2K;
	const rise_m2K_W = snowResistance_m2K_W(ice, snowWarmth, p) - first_m2K_W;
	const slushCover_m2K_W = film_m2K_W + first_m2K_W + rise_m2K_W / 2;
	const half_degCd = freezeSlush(ice, surfaceFrost_degCd(forcing, p), slushCover_m2K_W, p) / 2;
	const melted_m = (p.waterHeat_W_m2 * forcing.duration_d * DAY_s) / CLEAR_ICE_FUSION_J_m3;
	const start_m = Math.max(0, ice.clear_m - melted_m / 2);
	const bare_m2K_W = film_m2K_W + ice.white_m / WHITE_ICE_W_mK;
	const early_m2K_W = first_m2K_W + EARLY * rise_m2K_W;
	const late_m2K_W = first_m2K_W + LATE * rise_m2K_W;
	const middle_m = grownClear_m(start_m, half_degCd, bare_m2K_W + early_m2K_W);
	const covered_m = grownClear_m(middle_m, half_degCd, bare_m2K_W + late_m2K_W);
	const part = thinnedPart(ice, p);
	const thinMiddle_m = grownClear_m(start_m, half_degCd, bare_m2K_W + part * early_m2K_W);
	const thin_m = grownClear_m(thinMiddle_m, half_degCd, bare_m2K_W + part * late_m2K_W);
	const grown_m = covered_m + p.thinSnowFraction * (thin_m - covered_m);
	const healed_m = heal(ice, grown_m - start_m);
	ice.clear_m = Math.max(0, grown_m - healed_m - melted_m / 2);
}

/**
 * What is left of the snow where wind and flooding leave no more than goes with the ice.
 *
 *   min(1, s h/h_s)
 *
 * A sheet floats settled snow of about a third of its own thickness. Deeper snow lies unevenly, and the
 * cold gets in where it is thin [Sturm2003] [R]. That growth follows the reported snow only in part is
 * what the measured winters show [C].
 */
function thinnedPart(ice: SiteIce, p: Parameters): number {
	const most_m = p.thinSnowRatio * (ice.clear_m + ice.white_m);
	return ice.snow_m > most_m ? most_m / ice.snow_m : 1;
}

/** Freezes slush from its top and returns the frost left over. */
function freezeSlush(
	ice: SiteIce,
	freezing_degCd: number,
	film_m2K_W: number,
	p: Parameters
): number {
	if (ice.slush_m <= 0) return freezing_degCd;
	const phi = waterFraction(p.slushMatrix_kg_m3);
	const cover_m2K_W = film_m2K_W + ice.crust_m / WHITE_ICE_W_mK;
	const left_degCd =
		ice.waterHeat_J_m2 > 0 ? coolPumped(ice, freezing_degCd, cover_m2K_W) : freezing_degCd;
	const possible_m = frozenSlush_m(left_degCd, phi, cover_m2K_W);
	const frozen_m = Math.min(ice.slush_m, possible_m);
	const white_m = whiteFromSlush_m(frozen_m, p.slushMatrix_kg_m3);
	ice.white_m += white_m;
	ice.slush_m -= frozen_m;
	ice.crust_m = ice.slush_m > 0 ? ice.crust_m + white_m : 0;
	if (frozen_m === possible_m) return 0;
	return left_degCd - frostToFreeze_degCd(frozen_m, phi, cover_m2K_W);
}

/**
 * Takes the heat that standing water has beyond slush, and returns the frost left over.
 *
 * Through half the depth that is to freeze, so that the whole takes as long as water by itself:
 * ρ_w L (z²/(2 k_w) + z R) [C]. Ice is counted late rather than early.
 */
function coolPumped(ice: SiteIce, freezing_degCd: number, cover_m2K_W: number): number {
	const whole_m2K_W = cover_m2K_W + ice.slush_m / (2 * WHITE_ICE_W_mK);
	const needed_degCd = (ice.waterHeat_J_m2 * whole_m2K_W) / DAY_s;
	if (needed_degCd <= freezing_degCd) {
		ice.waterHeat_J_m2 = 0;
		return freezing_degCd - needed_degCd;
	}
	ice.waterHeat_J_m2 -= (freezing_degCd * DAY_s) / whole_m2K_W;
	return 0;
}

/**
 * Lake snow conducts more than land snow of its density: wind slab, ice lenses, uneven depth. By how
 * much its own warmth adds to that says `snow-warmth.ts`.
 */
export function snowResistance_m2K_W(snow: Snow, warmth: number, p: Parameters): number {
	if (snow.snow_m <= 0) return 0;
	const land_W_mK = landSnow_W_mK(snow.snowDensity_kg_m3);
	return snow.snow_m / (warmth * p.snowConductivityRatio * land_W_mK);
}

/** Frost refreezes water inside the ice before it adds any below; returns the growth it cost. */
function heal(ice: SiteIce, growth_m: number): number {
	if (ice.liquidFraction <= 0) return 0;
	const thickness_m = ice.clear_m + ice.white_m;
	const used_m = Math.min(growth_m, ice.liquidFraction * thickness_m);
	if (used_m > 0) ice.liquidFraction -= used_m / thickness_m;
	return used_m;
}
