import { expect, test } from 'vitest';
import { openSite, type SiteIce } from '#lib/model/site-ice.ts';
import { flood, melt, rain } from '#lib/model/cover.ts';
import { floodedSlush_m, freeboard_m, localExcess_kg_m2 } from '#lib/model/flooding.ts';
import { buoyancy_kg_m2 } from '#lib/model/flooding.ts';
import type { Forcing } from '#lib/model/forcing.ts';
import { freeze } from '#lib/model/frost.ts';
import { parametersFor } from '#lib/model/parameters.ts';
import { slush_kg_m3 } from '#lib/model/slush.ts';
import { stepRates } from '#lib/model/step-rates.ts';
import { snowMass_kg_m2 } from '#lib/model/snow.ts';
import { INVENTED_LAKE } from '../support/seeded-winter.ts';

const P = parametersFor(INVENTED_LAKE);
const BARE = 0; // resistance of no snow
const AS_LAW = { snowWarmth: 1 };
const EVEN = { ...P, snowSpreadFraction: 0, flooding_d: 1e-6 };

test('snow heavier than the ice can float floods it, until it is afloat again', () => {
	const ice = site({ clear_m: 0.2, snow_m: 0.3, snowDensity_kg_m3: 200 });
	flood(ice, stepRates(weather(), EVEN), EVEN);
	expect(ice.slush_m).toBeGreaterThan(0.05);
	const density = slush_kg_m3(P.slushMatrix_kg_m3);
	const buoyancy = buoyancy_kg_m2(ice.clear_m, ice.white_m, ice.slush_m, density);
	expect(freeboard_m(buoyancy, snowMass_kg_m2(ice))).toBeCloseTo(0, 3);
});

test('flooding in place agrees with the balance of Archimedes', () => {
	const ice = site({ clear_m: 0.2, snow_m: 0.3, snowDensity_kg_m3: 200 });
	const expected_m = floodedSlush_m(60, buoyancy_kg_m2(0.2, 0), P.slushMatrix_kg_m3);
	for (let i = 0; i < 60; i++) flood(ice, stepRates(weather(), EVEN), EVEN);
	expect(ice.slush_m).toBeCloseTo(expected_m, 3);
});

test('light snow does not flood a thick sheet, but drifts can flood one that floats in the mean', () => {
	expect(localExcess_kg_m2(10, 40, 0)).toBe(0);
	expect(localExcess_kg_m2(10, 40, 0.15)).toBeLessThan(1e-6);
	expect(localExcess_kg_m2(30, 33, 0.15)).toBeGreaterThan(0.5);
	expect(localExcess_kg_m2(90, 30, 0.01)).toBeCloseTo(60, 9);
});

test('slush takes the frost first: no clear ice grows until it has frozen', () => {
	const ice = site({ clear_m: 0.2, slush_m: 0.1 });
	freeze(ice, BARE, weather({ freezing_degCd: 5 }), AS_LAW, { ...P, waterHeat_W_m2: 0 });
	expect(ice.white_m).toBeGreaterThan(0.02);
	expect(ice.slush_m).toBeLessThan(0.1);
	expect(ice.clear_m).toBe(0.2);
	freeze(ice, BARE, weather({ freezing_degCd: 60 }), AS_LAW, { ...P, waterHeat_W_m2: 0 });
	expect(ice.slush_m).toBe(0);
	expect(ice.clear_m).toBeGreaterThan(0.2);
});

test('freezing slush keeps the mass of water and snow', () => {
	const ice = site({ clear_m: 0.2, slush_m: 0.05 });
	freeze(ice, BARE, weather({ freezing_degCd: 100 }), AS_LAW, P);
	expect(ice.white_m * 880).toBeCloseTo(0.05 * slush_kg_m3(P.slushMatrix_kg_m3), 9);
});

test('rain and meltwater soak the snow and make slush; on bare ice rain runs off', () => {
	const wet = site({ clear_m: 0.3, snow_m: 0.15, snowDensity_kg_m3: 250 });
	rain(wet, weather({ rain_kg_m2: 5 }), P);
	expect(wet.slush_m).toBeGreaterThan(0.005);
	const afterRain_m = wet.slush_m;
	melt(wet, weather({ thawing_degCd: 2 }), P);
	expect(wet.slush_m).toBeGreaterThan(afterRain_m);
	const bare = site({ clear_m: 0.3 });
	rain(bare, weather({ rain_kg_m2: 5 }), P);
	expect(bare.slush_m).toBe(0);
});

test('thaw goes to the snow first and what is left goes to the ice', () => {
	const deep = site({ clear_m: 0.3, snow_m: 0.2, snowDensity_kg_m3: 250 });
	expect(melt(deep, weather({ thawing_degCd: 3 }), P)).toBeCloseTo(0, 12);
	const thin = site({ clear_m: 0.3, snow_m: 0.004, snowDensity_kg_m3: 250 });
	expect(melt(thin, weather({ thawing_degCd: 3 }), P)).toBeGreaterThan(2);
	expect(thin.snow_m).toBe(0);
});

test('a mild noon in a frosty day melts no snow for good', () => {
	const ice = site({ clear_m: 0.3, snow_m: 0.1, snowDensity_kg_m3: 250 });
	expect(melt(ice, weather({ thawing_degCd: 0.5, freezing_degCd: 4 }), P)).toBe(0);
	expect(snowMass_kg_m2(ice)).toBe(25);
});

function site(known: Partial<SiteIce>): SiteIce {
	return { ...openSite(), ...known };
}

function weather(known: Partial<Forcing> = {}): Forcing {
	return {
		duration_d: 1,
		freezing_degCd: 0,
		thawing_degCd: 0,
		air_degC: 0,
		warmFraction: 0,
		snowfall_kg_m2: 0,
		freshSnow_kg_m3: 100,
		rain_kg_m2: 0,
		sun_W_m2: 0,
		...known
	};
}
