import { expect, test } from 'vitest';
import { parametersFor } from '#lib/model/parameters.ts';
import { applyEvent, isHeldOpen } from '#lib/model/site-events.ts';
import { openSite, type SiteIce } from '#lib/model/site-ice.ts';
import { snowMass_kg_m2 } from '#lib/model/snow.ts';
import { INVENTED_LAKE } from '../support/seeded-winter.ts';

const P = parametersFor(INVENTED_LAKE);
const ON = '2027-01-10';

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
	expect(ice.slush_m).toBe(0.03);
	expect(snowMass_kg_m2(ice)).toBeCloseTo(40 - 0.03 * P.slushMatrix_kg_m3, 9);
	const open = openSite();
	applyEvent(open, { kind: 'pumped', on: ON, water_m: 0.03 }, P);
	expect(open.slush_m).toBe(0);
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
