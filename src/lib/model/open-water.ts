import { cover_m2K_W, grownClear_m } from './conduction.ts';
import { DAY_s } from './constants.ts';
import type { Forcing, IceState } from './day.ts';
import type { Parameters } from './parameters.ts';

const OPEN_ALBEDO = 0.07; // of calm water [M-hi]

/**
 * Open water after a step: warmth and sun are stored, frost takes them out again and then makes ice.
 *
 * Snow that falls on it is gone. The whole upper layer is one store, without exchange with the deep.
 */
export function openWater(state: IceState, forcing: Forcing, p: Parameters): IceState {
	const perDegreeDay_J_m2 = p.exchange_W_m2K * DAY_s;
	const sun_J_m2 =
		forcing.sun_W_m2 * p.cloudFraction * (1 - OPEN_ALBEDO) * forcing.duration_d * DAY_s;
	const warmed =
		state.waterHeat_J_m2 +
		forcing.thawing_degCd * perDegreeDay_J_m2 +
		sun_J_m2 * forcing.warmFraction;
	const left_J_m2 = forcing.freezing_degCd * perDegreeDay_J_m2 - warmed;
	if (left_J_m2 <= 0) return { ...state, waterHeat_J_m2: -left_J_m2 };
	const cover = cover_m2K_W(0, 1, 0, p.exchange_W_m2K);
	const clear_m = grownClear_m(0, left_J_m2 / perDegreeDay_J_m2, cover);
	return { column: { ...state.column, clear_m }, crust_m: 0, waterHeat_J_m2: 0 };
}
