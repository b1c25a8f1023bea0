import type { IceColumn } from './column.ts';
import { buoyancy_kg_m2, localExcess_kg_m2 } from './flooding.ts';
import { freeze } from './frost.ts';
import { openWater } from './open-water.ts';
import type { Parameters } from './parameters.ts';
import { slush_kg_m3, soakedSlush_m } from './slush.ts';
import { addSnow, removeSnow, settle, snowMass_kg_m2, type Snow } from './snow.ts';
import { thaw } from './thaw.ts';

/** What the weather does to a site over a time: sums, not rates. */
export interface Forcing {
	duration_d: number;
	freezing_degCd: number;
	thawing_degCd: number;
	/** Share of the time above freezing. */
	warmFraction: number;
	/** As water; before wind takes its part. */
	snowfall_kg_m2: number;
	freshSnow_kg_m3: number;
	rain_kg_m2: number;
	/** Clear-sky mean. */
	sun_W_m2: number;
}

/** A site's ice and what else must be remembered of it from one step to the next. */
export interface IceState {
	column: IceColumn;
	/** White ice that has frozen over the slush now lying under it. */
	crust_m: number;
	/** Warmth of open water that frost must take before new ice can form. */
	waterHeat_J_m2: number;
}

/** The site after one day, taken in equal steps so that its processes act side by side. */
export function advanceDay(
	state: IceState,
	day: Forcing,
	parameters: Parameters,
	steps: number
): IceState {
	const part = shareOf(day, steps);
	let next = state;
	for (let i = 0; i < steps; i++) next = advance(next, part, parameters);
	return next;
}

function shareOf(day: Forcing, steps: number): Forcing {
	return {
		...day,
		duration_d: day.duration_d / steps,
		freezing_degCd: day.freezing_degCd / steps,
		thawing_degCd: day.thawing_degCd / steps,
		snowfall_kg_m2: day.snowfall_kg_m2 / steps,
		rain_kg_m2: day.rain_kg_m2 / steps
	};
}

function advance(state: IceState, forcing: Forcing, p: Parameters): IceState {
	const { column } = state;
	if (column.clear_m + column.white_m + column.slush_m <= 0) return openWater(state, forcing, p);
	const fallen = snowAfterFall(column, forcing, p);
	const melt_kg_m2 = Math.min(
		snowMass_kg_m2(fallen),
		p.snowMelt_kg_m2degCd * forcing.thawing_degCd
	);
	const thawLeft_degCd = forcing.thawing_degCd - melt_kg_m2 / p.snowMelt_kg_m2degCd;
	const soaked = soak({ ...column, ...removeSnow(fallen, melt_kg_m2) }, melt_kg_m2, forcing, p);
	const flooded = flood(soaked, forcing, p);
	const frozen = freeze({ ...state, column: flooded }, column, forcing, p);
	return thaw(frozen, thawLeft_degCd, forcing, p);
}

function snowAfterFall(column: IceColumn, forcing: Forcing, p: Parameters): Snow {
	const kept_kg_m2 = forcing.snowfall_kg_m2 * p.snowKeptFraction;
	const fallen = addSnow(column, kept_kg_m2, forcing.freshSnow_kg_m3);
	return settle(fallen, p.settledSnow_kg_m3, p.settling_h, forcing.duration_d * 24);
}

/** Meltwater and rain in the lower snow become slush; a part of them finds a way off the ice. */
function soak(column: IceColumn, melt_kg_m2: number, forcing: Forcing, p: Parameters): IceColumn {
	const water_kg_m2 = p.soakedFraction * (melt_kg_m2 + forcing.rain_kg_m2);
	if (water_kg_m2 <= 0 || column.snow_m <= 0) return column;
	return toSlush(
		column,
		soakedSlush_m(water_kg_m2, snowMass_kg_m2(column), p.slushMatrix_kg_m3),
		p
	);
}

/** Water comes up through cracks over some days where snow weighs more than the sheet can float. */
function flood(column: IceColumn, forcing: Forcing, p: Parameters): IceColumn {
	if (column.snow_m <= 0) return column;
	const snow_kg_m2 = snowMass_kg_m2(column);
	const density = slush_kg_m3(p.slushMatrix_kg_m3);
	const buoyancy = buoyancy_kg_m2(column.clear_m, column.white_m, column.slush_m, density);
	const excess = localExcess_kg_m2(snow_kg_m2, buoyancy, p.snowSpreadFraction);
	const arrived = 1 - Math.exp(-forcing.duration_d / p.flooding_d);
	return toSlush(column, (excess * arrived) / p.slushMatrix_kg_m3, p);
}

function toSlush(column: IceColumn, slush_m: number, p: Parameters): IceColumn {
	const possible_m = Math.min(slush_m, snowMass_kg_m2(column) / p.slushMatrix_kg_m3);
	const snow = removeSnow(column, possible_m * p.slushMatrix_kg_m3);
	return { ...column, ...snow, slush_m: column.slush_m + possible_m };
}
