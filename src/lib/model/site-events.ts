import { FUSION_J_kg, WATER_kg_m3 } from './constants.ts';
import type { Parameters } from './parameters.ts';
import { hasIce, openSite, type SiteIce } from './site-ice.ts';
import type { SiteEvent } from './site-winter.ts';
import { soakedSlush_m, waterFraction } from './slush.ts';
import { pack, removeSnow, snowMass_kg_m2 } from './snow.ts';

const PACKED_kg_m3 = 450; // snow packed by machines; wet or melting snow is 350 to 500 [M-med]

/** Lets an event act on the site at the start of its day. */
export function applyEvent(ice: SiteIce, event: SiteEvent, p: Parameters): void {
	switch (event.kind) {
		case 'reopened':
			Object.assign(ice, openSite());
			break;
		case 'cleared':
			ice.snow_m = Math.min(ice.snow_m, Math.max(0, event.snow_m));
			break;
		case 'packed':
			pack(ice, snowMass_kg_m2(ice), event.density_kg_m3 ?? PACKED_kg_m3);
			break;
		case 'pumped':
			pumpWater(ice, event.water_m, p);
			break;
	}
}

/**
 * Pumped water soaks the snow from below, and what finds no snow stands over the ice: all of it is
 * slush until it freezes as white ice. Without ice it is gone.
 *
 *   soaked W/(ρ_w φ), at most what the snow can give;  standing W - φ soaked
 *
 * Standing water has no snow in it, and so (1 - φ) ρ_w L more heat to lose than slush as deep; frost
 * takes that first. Its warmth above freezing is left out: 1 % of the latent heat for each degree [C].
 */
function pumpWater(ice: SiteIce, water_m: number, p: Parameters): void {
	if (!hasIce(ice) || water_m <= 0) return;
	const matrix_kg_m3 = p.slushMatrix_kg_m3;
	const phi = waterFraction(matrix_kg_m3);
	const soaked_m = soakedSlush_m(water_m * WATER_kg_m3, snowMass_kg_m2(ice), matrix_kg_m3);
	const standing_m = Math.max(0, water_m - phi * soaked_m);
	removeSnow(ice, soaked_m * matrix_kg_m3);
	ice.slush_m += soaked_m + standing_m;
	ice.waterHeat_J_m2 += (1 - phi) * standing_m * WATER_kg_m3 * FUSION_J_kg;
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
