import { OPEN_WATER } from './column.ts';
import type { IceState } from './day.ts';
import type { Parameters } from './parameters.ts';
import type { SiteEvent } from './site-winter.ts';
import { removeSnow, snowMass_kg_m2 } from './snow.ts';

const PACKED_kg_m3 = 450; // snow packed by machines; wet or melting snow is 350 to 500 [M-med]

/** Open water without stored warmth, as on a day of freeze-up. */
export function openSite(): IceState {
	return { column: OPEN_WATER, crust_m: 0, waterHeat_J_m2: 0 };
}

/** The site after an event at the start of its day. */
export function applyEvent(state: IceState, event: SiteEvent, p: Parameters): IceState {
	switch (event.kind) {
		case 'reopened':
			return openSite();
		case 'cleared':
			return clearSnow(state, event.snow_m);
		case 'packed':
			return packSnow(state, event.density_kg_m3 ?? PACKED_kg_m3);
		case 'pumped':
			return pumpWater(state, event.water_m, p);
	}
}

function clearSnow(state: IceState, snow_m: number): IceState {
	if (state.column.snow_m <= snow_m) return state;
	return { ...state, column: { ...state.column, snow_m: Math.max(0, snow_m) } };
}

/** Packing keeps the mass; snow that is denser already stays as it is. */
function packSnow(state: IceState, density_kg_m3: number): IceState {
	const { column } = state;
	if (column.snow_m <= 0 || column.snowDensity_kg_m3 >= density_kg_m3) return state;
	const snow_m = snowMass_kg_m2(column) / density_kg_m3;
	return { ...state, column: { ...column, snow_m, snowDensity_kg_m3: density_kg_m3 } };
}

/**
 * Pumped water soaks the snow from below, and what finds no snow stands over the ice: all of it is
 * slush until it freezes as white ice. Without ice it is gone.
 */
function pumpWater(state: IceState, water_m: number, p: Parameters): IceState {
	const { column } = state;
	if (column.clear_m + column.white_m <= 0 || water_m <= 0) return state;
	const taken_kg_m2 = Math.min(snowMass_kg_m2(column), water_m * p.slushMatrix_kg_m3);
	const slush_m = column.slush_m + water_m;
	return { ...state, column: { ...column, ...removeSnow(column, taken_kg_m2), slush_m } };
}

/** True while a site that opened again has not refrozen; without a day for it, to the end. */
export function isHeldOpen(events: readonly SiteEvent[], on: string): boolean {
	return events.some(
		(event) =>
			event.kind === 'reopened' &&
			event.on <= on &&
			(event.refrozeOn === null || on < event.refrozeOn)
	);
}
