import { OPEN_WATER } from './column.ts';
import { CLEAR_ICE_FUSION_J_m3, DAY_s } from './constants.ts';
import type { Forcing, IceState } from './day.ts';
import { absorbedFraction, meltTop, rottedFraction } from './decay.ts';
import type { Parameters } from './parameters.ts';

const ROTTEN_FRACTION = 0.3; // liquid share from which a thin sheet no longer holds together [M-lo]

/**
 * The site after a step's warmth and sun, the snow having taken its part: melt at the top in the
 * warm hours, rotting inside at any temperature, and the end when thin rotten ice breaks up.
 */
export function thaw(
	state: IceState,
	thawing_degCd: number,
	forcing: Forcing,
	p: Parameters
): IceState {
	const absorbed_J_m2 =
		forcing.sun_W_m2 *
		p.cloudFraction *
		absorbedFraction(state.column, p) *
		forcing.duration_d *
		DAY_s;
	const air_J_m2 = thawing_degCd * p.iceMelt_m_degCd * CLEAR_ICE_FUSION_J_m3;
	const sunTop_J_m2 =
		absorbed_J_m2 * (1 - p.insideFraction) * Math.min(1, 2 * forcing.warmFraction);
	const rotted = {
		...state.column,
		liquidFraction: rottedFraction(state.column, absorbed_J_m2 * p.insideFraction)
	};
	const bare = state.column.snow_m <= 0;
	const column = meltTop(rotted, air_J_m2 + (bare ? sunTop_J_m2 : 0), p.slushMatrix_kg_m3);
	const sound_m = (column.clear_m + column.white_m) * (1 - column.liquidFraction);
	const broken = column.liquidFraction > ROTTEN_FRACTION && sound_m < p.breakUp_m;
	if (broken || column.clear_m + column.white_m + column.slush_m <= 0)
		return { column: OPEN_WATER, crust_m: 0, waterHeat_J_m2: 0 };
	return { ...state, column };
}
