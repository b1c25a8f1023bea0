import { expect, test } from 'vitest';
import { advanceDay } from '#lib/model/day.ts';
import { dayRates } from '#lib/model/step-rates.ts';
import type { Forcing } from '#lib/model/forcing.ts';
import { parametersFor } from '#lib/model/parameters.ts';
import { openSite, pictureOf, type SiteIce } from '#lib/model/site-ice.ts';
import { INVENTED_LAKE } from '../support/seeded-winter.ts';

const P = parametersFor(INVENTED_LAKE);

test('water that has warmed after the ice went does not freeze on the first cold night', () => {
	const ice = openSite();
	for (let i = 0; i < 10; i++) pass(ice, { thawing_degCd: 6, warmFraction: 1, sun_W_m2: 250 });
	pass(ice, { freezing_degCd: 2, air_degC: -2 });
	expect(ice.clear_m).toBe(0);
});

test('open water freezes over when frost has taken its warmth', () => {
	const ice = openSite();
	pass(ice, { thawing_degCd: 2, warmFraction: 1 });
	expect(ice.waterHeat_J_m2).toBeGreaterThan(0);
	pass(ice, { freezing_degCd: 12, air_degC: -12 });
	expect(ice.clear_m).toBeGreaterThan(0.02);
	expect(ice.waterHeat_J_m2).toBe(0);
});

test('snow that falls on open water is gone, on the first ice it lies', () => {
	const open = openSite();
	pass(open, { thawing_degCd: 1, warmFraction: 1, snowfall_kg_m2: 10 });
	expect(pictureOf(open).snow_m).toBe(0);
	const freezing = openSite();
	pass(freezing, { freezing_degCd: 10, air_degC: -10, snowfall_kg_m2: 1 });
	expect(freezing.snow_m + freezing.white_m).toBeGreaterThan(0.003);
});

test('the first ice of a day of frost is that of the film law, less the snow of the day', () => {
	const bare = openSite();
	pass(bare, { freezing_degCd: 10, air_degC: -10 });
	const snowy = openSite();
	pass(snowy, { freezing_degCd: 10, air_degC: -10, snowfall_kg_m2: 1 });
	expect(bare.clear_m).toBeGreaterThan(0.025);
	expect(bare.clear_m).toBeLessThan(0.061);
	expect(snowy.clear_m).toBeLessThan(bare.clear_m);
});

function pass(ice: SiteIce, known: Partial<Forcing>): void {
	const still: Forcing = {
		duration_d: 1,
		freezing_degCd: 0,
		thawing_degCd: 0,
		air_degC: 3,
		warmFraction: 0,
		snowfall_kg_m2: 0,
		freshSnow_kg_m3: 100,
		rain_kg_m2: 0,
		sun_W_m2: 0
	};
	const day = { ...still, ...known };
	advanceDay(ice, day, dayRates(day, P, 4), P);
}
