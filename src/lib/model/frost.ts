import type { IceColumn } from './column.ts';
import { cover_m2K_W, grownClear_m } from './conduction.ts';
import { CLEAR_ICE_FUSION_J_m3, DAY_s, WHITE_ICE_W_mK } from './constants.ts';
import type { Forcing, IceState } from './day.ts';
import type { Parameters } from './parameters.ts';
import { frostToFreeze_degCd, frozenSlush_m, waterFraction, whiteFromSlush_m } from './slush.ts';
import { landSnow_W_mK, type Snow } from './snow.ts';

/**
 * The site after a step's frost: slush first, then water inside the ice, then growth at the bottom,
 * less what the lake's own heat melts there.
 *
 * The snow counts with the mean of its resistance before and after the step.
 */
export function freeze(state: IceState, before: Snow, forcing: Forcing, p: Parameters): IceState {
	const snow_m2K_W = (snowResistance(before, p) + snowResistance(state.column, p)) / 2;
	const film = cover_m2K_W(0, 1, 0, p.exchange_W_m2K) + snow_m2K_W;
	const { column, crust_m, left_degCd } = freezeSlush(state, forcing.freezing_degCd, film, p);
	const melted_m = (p.waterHeat_W_m2 * forcing.duration_d * DAY_s) / CLEAR_ICE_FUSION_J_m3;
	const start_m = column.clear_m - melted_m / 2;
	const cover = film + column.white_m / WHITE_ICE_W_mK;
	const grown_m = grownClear_m(Math.max(0, start_m), left_degCd, cover);
	const healed = heal(column, grown_m - Math.max(0, start_m));
	const clear_m = Math.max(0, grown_m - healed.used_m - melted_m / 2);
	return {
		...state,
		crust_m,
		column: { ...column, clear_m, liquidFraction: healed.liquidFraction }
	};
}

function freezeSlush(
	state: IceState,
	freezing_degCd: number,
	film_m2K_W: number,
	p: Parameters
): { column: IceColumn; crust_m: number; left_degCd: number } {
	const { column } = state;
	if (column.slush_m <= 0) return { column, crust_m: 0, left_degCd: freezing_degCd };
	const phi = waterFraction(p.slushMatrix_kg_m3);
	const cover = film_m2K_W + state.crust_m / WHITE_ICE_W_mK;
	const possible_m = frozenSlush_m(freezing_degCd, phi, cover);
	const frozen_m = Math.min(column.slush_m, possible_m);
	const used_degCd =
		frozen_m < possible_m ? frostToFreeze_degCd(frozen_m, phi, cover) : freezing_degCd;
	const white_m = whiteFromSlush_m(frozen_m, p.slushMatrix_kg_m3);
	const slush_m = column.slush_m - frozen_m;
	return {
		column: { ...column, slush_m, white_m: column.white_m + white_m },
		crust_m: slush_m > 0 ? state.crust_m + white_m : 0,
		left_degCd: freezing_degCd - used_degCd
	};
}

function snowResistance(snow: Snow, p: Parameters): number {
	if (snow.snow_m <= 0) return 0;
	return snow.snow_m / (p.snowConductivityRatio * landSnow_W_mK(snow.snowDensity_kg_m3));
}

/** Frost refreezes water inside the ice before it adds any below. */
function heal(column: IceColumn, growth_m: number): { liquidFraction: number; used_m: number } {
	const thickness_m = column.clear_m + column.white_m;
	const used_m = Math.min(growth_m, column.liquidFraction * thickness_m);
	if (used_m <= 0) return { liquidFraction: column.liquidFraction, used_m: 0 };
	return { liquidFraction: column.liquidFraction - used_m / thickness_m, used_m };
}
