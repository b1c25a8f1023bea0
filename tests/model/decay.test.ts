import { expect, test } from 'vitest';
import { absorbedFraction, meltBottom, meltTop } from '#lib/model/decay.ts';
import type { Forcing } from '#lib/model/forcing.ts';
import { freeze } from '#lib/model/frost.ts';
import { parametersFor } from '#lib/model/parameters.ts';
import { openSite, type SiteIce } from '#lib/model/site-ice.ts';
import { thaw } from '#lib/model/thaw.ts';
import { INVENTED_LAKE } from '../support/seeded-winter.ts';

const P = parametersFor(INVENTED_LAKE);
const BARE = 0; // resistance of no snow
const AS_LAW = { snowWarmth: 1 };
const APRIL: Forcing = {
	duration_d: 1,
	freezing_degCd: 3,
	thawing_degCd: 0,
	air_degC: -3,
	warmFraction: 0,
	snowfall_kg_m2: 0,
	freshSnow_kg_m3: 100,
	rain_kg_m2: 0,
	sun_W_m2: 270
};

test('spring sun rots bare ice in frost while its thickness hardly changes', () => {
	const ice = site({ clear_m: 0.5 });
	for (let i = 0; i < 10; i++) thaw(ice, 0, APRIL, P);
	expect(ice.liquidFraction).toBeGreaterThan(0.05);
	expect(ice.clear_m).toBeGreaterThan(0.4);
});

test('10 cm of snow keep the sun off', () => {
	const bare = { ...site({ clear_m: 0.5 }) };
	const covered = { ...bare, snow_m: 0.1, snowDensity_kg_m3: 300 };
	expect(absorbedFraction(covered, P)).toBeLessThan(0.1 * absorbedFraction(bare, P));
});

test('white ice takes in less sun than clear ice', () => {
	const clear = site({ clear_m: 0.4 });
	const white = site({ clear_m: 0.3, white_m: 0.1 });
	expect(absorbedFraction(white, P)).toBeLessThan(absorbedFraction(clear, P));
});

test('a warm day melts white ice before clear, by its degree-days', () => {
	const ice = site({ clear_m: 0.3, white_m: 0.01 });
	thaw(ice, 10, { ...APRIL, sun_W_m2: 0, warmFraction: 1 }, P);
	expect(ice.white_m).toBe(0);
	const melted_m = 0.01 * (880 / 916) + 0.3 - ice.clear_m;
	expect(melted_m).toBeCloseTo(10 * P.iceMelt_m_degCd, 9);
});

test('heat takes slush, white and clear ice from the top, clear and white from below', () => {
	const top = site({ clear_m: 0.2, white_m: 0.1, slush_m: 0.05 });
	meltTop(top, 1e6, P);
	expect(top).toMatchObject({ clear_m: 0.2, white_m: 0.1 });
	expect(top.slush_m).toBeLessThan(0.05);
	const bottom = site({ clear_m: 0.01, white_m: 0.1 });
	meltBottom(bottom, 0.03 * 916 * 3.34e5);
	expect(bottom.clear_m).toBe(0);
	expect(bottom.white_m).toBeCloseTo(0.08, 9);
});

test('frost refreezes the water inside before it adds ice below', () => {
	const ice = site({ clear_m: 0.4, liquidFraction: 0.1 });
	freeze(ice, BARE, { ...APRIL, freezing_degCd: 10 }, AS_LAW, { ...P, waterHeat_W_m2: 0 });
	expect(ice.liquidFraction).toBeLessThan(0.1);
	expect(ice.liquidFraction).toBeGreaterThan(0.05);
	expect(ice.clear_m).toBeCloseTo(0.4, 12);
});

test('thin rotten ice breaks up; thin sound ice does not', () => {
	const rotten = site({ clear_m: P.breakUp_m, liquidFraction: 0.5 });
	thaw(rotten, 0, { ...APRIL, sun_W_m2: 0 }, P);
	expect(rotten.clear_m).toBe(0);
	const sound = site({ clear_m: P.breakUp_m / 2 });
	thaw(sound, 0, { ...APRIL, sun_W_m2: 0 }, P);
	expect(sound.clear_m).toBe(P.breakUp_m / 2);
});

function site(known: Partial<SiteIce>): SiteIce {
	return { ...openSite(), ...known };
}
