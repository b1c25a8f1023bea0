import { expect, test } from 'vitest';
import { WATER_kg_m3, WHITE_ICE_kg_m3 } from '#lib/model/constants.ts';
import type { Forcing } from '#lib/model/forcing.ts';
import { freeze, snowResistance_m2K_W } from '#lib/model/frost.ts';
import { parametersFor } from '#lib/model/parameters.ts';
import { applyEvent, isHeldOpen } from '#lib/model/site-events.ts';
import { openSite, type SiteIce } from '#lib/model/site-ice.ts';
import { frostToFreeze_degCd, slush_kg_m3, waterFraction } from '#lib/model/slush.ts';
import { snowMass_kg_m2 } from '#lib/model/snow.ts';
import { surfaceFrost_degCd } from '#lib/model/surface-frost.ts';
import { INVENTED_LAKE } from '../support/seeded-winter.ts';

const P = parametersFor(INVENTED_LAKE);
const ON = '2027-01-10';

/** Snow that conducts as the law for land snow says. */
const AS_LAW = { snowWarmth: 1 };

/** A day of ten degrees of frost, in the dark. */
const FROST: Forcing = {
	duration_d: 1,
	freezing_degCd: 10,
	thawing_degCd: 0,
	air_degC: -10,
	warmFraction: 0,
	snowfall_kg_m2: 0,
	freshSnow_kg_m3: 100,
	rain_kg_m2: 0,
	sun_W_m2: 0
};

test('clearing takes snow down to a depth and never adds any', () => {
	const ice = snowy();
	applyEvent(ice, { kind: 'cleared', on: ON, snow_m: 0.02 }, P);
	expect(ice.snow_m).toBe(0.02);
	applyEvent(ice, { kind: 'cleared', on: ON, snow_m: 0.1 }, P);
	expect(ice.snow_m).toBe(0.02);
});

test('packing keeps the mass of the snow', () => {
	const ice = snowy();
	applyEvent(ice, { kind: 'packed', on: ON, density_kg_m3: null }, P);
	expect(ice.snowDensity_kg_m3).toBe(450);
	expect(snowMass_kg_m2(ice)).toBeCloseTo(40, 12);
});

test('pumped water is slush, in the snow as far as there is any', () => {
	const ice = snowy();
	applyEvent(ice, { kind: 'pumped', on: ON, water_m: 0.03 }, P);
	const slush_m = 0.03 / waterFraction(P.slushMatrix_kg_m3);
	expect(ice.slush_m).toBeCloseTo(slush_m, 12);
	const slush_kg_m2 = slush_m * slush_kg_m3(P.slushMatrix_kg_m3);
	expect(snowMass_kg_m2(ice) + slush_kg_m2).toBeCloseTo(40 + 30, 9);
	expect(ice.waterHeat_J_m2).toBe(0);
	const open = openSite();
	applyEvent(open, { kind: 'pumped', on: ON, water_m: 0.03 }, P);
	expect(open.slush_m).toBe(0);
});

test('what finds no snow stands over the ice as deep as it was pumped', () => {
	const bare = { ...openSite(), clear_m: 0.4 };
	applyEvent(bare, { kind: 'pumped', on: ON, water_m: 0.05 }, P);
	expect(bare.slush_m).toBeCloseTo(0.05, 12);
	const little = { ...bare, slush_m: 0, waterHeat_J_m2: 0, snow_m: 0.02, snowDensity_kg_m3: 200 };
	applyEvent(little, { kind: 'pumped', on: ON, water_m: 0.05 }, P);
	expect(little.snow_m).toBe(0);
	const soaked_m = 4 / P.slushMatrix_kg_m3;
	const standing_m = 0.05 - soaked_m * waterFraction(P.slushMatrix_kg_m3);
	expect(little.slush_m).toBeCloseTo(soaked_m + standing_m, 12);
	expect(little.waterHeat_J_m2).toBeLessThan(bare.waterHeat_J_m2);
});

test.each([0.03, 0.1])('%d m of pumped water freezes by the frost that water takes', (water_m) => {
	const ice = { ...openSite(), clear_m: 0.4 };
	applyEvent(ice, { kind: 'pumped', on: ON, water_m }, P);
	const step: Forcing = { ...FROST, duration_d: 0.005, freezing_degCd: 0.05 };
	let frost_degCd = 0;
	while (ice.slush_m > 0 && frost_degCd < 200) {
		freeze(ice, 0, step, AS_LAW, P);
		frost_degCd += surfaceFrost_degCd(step, P);
	}
	// ρ_w L (z²/(2 k) + z/H) [C], the closed form of frozen slush with water alone in it.
	const water_degCd = frostToFreeze_degCd(water_m, 1, 1 / P.exchange_W_m2K);
	expect(frost_degCd).toBeGreaterThan(0.99 * water_degCd);
	expect(frost_degCd).toBeLessThan(1.03 * water_degCd);
	expect(ice.white_m).toBeGreaterThan(water_m);
	expect(ice.white_m * WHITE_ICE_kg_m3).toBeLessThan(water_m * WATER_kg_m3);
});

test('cleared ice takes the same frost many times faster, by the layered law of conduction', () => {
	const grown = (snow_m: number) => {
		const ice = { ...openSite(), clear_m: 0.2, snow_m, snowDensity_kg_m3: 250 };
		applyEvent(ice, { kind: 'cleared', on: ON, snow_m: 0 }, P);
		const uncleared = { ...openSite(), clear_m: 0.2, snow_m, snowDensity_kg_m3: 250 };
		for (const each of [ice, uncleared]) {
			freeze(each, snowResistance_m2K_W(each, 1, P), { ...FROST, freezing_degCd: 10 }, AS_LAW, P);
		}
		return { cleared_m: ice.clear_m - 0.2, uncleared_m: uncleared.clear_m - 0.2 };
	};
	const { cleared_m, uncleared_m } = grown(0.1);
	expect(grown(0).cleared_m).toBe(grown(0).uncleared_m);
	expect(cleared_m).toBeGreaterThan(3 * Math.max(0, uncleared_m));
	// Bare ice of 20 cm at -10 °C with a film of 20: 20.28 mm a day [C].
	const film20 = { ...P, exchange_W_m2K: 20, skyLoss_W_m2: 0, waterHeat_W_m2: 0 };
	const bare = { ...openSite(), clear_m: 0.2 };
	freeze(bare, 0, { ...FROST, duration_d: 0.01, freezing_degCd: 0.1 }, AS_LAW, film20);
	expect((bare.clear_m - 0.2) * 100 * 1000).toBeCloseTo(20.28, 1);
});

test('a site that opened is held open until the day it refroze, without one for good', () => {
	const opened = { kind: 'reopened' as const, on: ON, refrozeOn: '2027-01-14' };
	expect(isHeldOpen([opened], '2027-01-09')).toBe(false);
	expect(isHeldOpen([opened], ON)).toBe(true);
	expect(isHeldOpen([opened], '2027-01-13')).toBe(true);
	expect(isHeldOpen([opened], '2027-01-14')).toBe(false);
	expect(isHeldOpen([{ ...opened, refrozeOn: null }], '2027-05-01')).toBe(true);
});

function snowy(): SiteIce {
	return { ...openSite(), clear_m: 0.4, snow_m: 0.2, snowDensity_kg_m3: 200 };
}
