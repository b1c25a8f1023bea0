import type { Parameters } from './parameters.ts';
import { hasIce, openSite, type SiteIce } from './site-ice.ts';
import type { SiteEvent } from './site-winter.ts';
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
 */
function pumpWater(ice: SiteIce, water_m: number, p: Parameters): void {
	if (!hasIce(ice) || water_m <= 0) return;
	removeSnow(ice, Math.min(snowMass_kg_m2(ice), water_m * p.slushMatrix_kg_m3));
	ice.slush_m += water_m;
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
