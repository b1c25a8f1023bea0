import { expect, test } from 'vitest';
import { frostToGo_degCd, growthRate_m_d, type Sheet } from '#lib/model/early/growth-rate.ts';

/** Bare, with the constants of the tables: film 20 W/m²K, land snow, no heat from the water. */
const BARE: Sheet = {
	clear_m: 0.2,
	white_m: 0,
	snow_m: 0,
	snowDensity_kg_m3: 250,
	exchange_W_m2K: 20,
	snowConductivityRatio: 1,
	waterHeat_W_m2: 0
};

/** Conduction through layers in series, computed apart in Python from the stated constants. */
test.each([
	['20 cm bare', {}, 20.28],
	['20 cm, 5 cm of snow', { snow_m: 0.05 }, 3.98],
	['20 cm, 10 cm of snow', { snow_m: 0.1 }, 2.2],
	['20 cm and 10 cm white, 10 cm of snow', { white_m: 0.1, snow_m: 0.1 }, 2.12],
	['10 cm, 5 cm of snow', { clear_m: 0.1, snow_m: 0.05 }, 4.24],
	['20 cm, 10 cm of snow at 300 kg/m³', { snow_m: 0.1, snowDensity_kg_m3: 300 }, 3.03]
])('at -10 °C %s grows by %s mm', (_, change, expected_mm_d) => {
	expect(1000 * growthRate_m_d({ ...BARE, ...change }, -10)).toBeCloseTo(expected_mm_d, 2);
});

test('warm air grows nothing, and heat from the water can stop growth', () => {
	expect(growthRate_m_d(BARE, 3)).toBe(0);
	expect(growthRate_m_d({ ...BARE, snow_m: 0.2, waterHeat_W_m2: 5 }, -5)).toBe(0);
});

/** Frost from nothing to a thickness, film model, same origin. */
test.each([
	[0.05, 20, 10.8],
	[0.1, 20, 25.6],
	[0.15, 20, 44.3],
	[0.2, 20, 67.0],
	[0.1, 10, 43.3],
	[0.2, 10, 102.4]
])('to %s m of bare ice at %s W/m²K it takes %s °C·d', (thickness_m, exchange_W_m2K, expected) => {
	const open = { ...BARE, clear_m: 0, exchange_W_m2K };
	expect(frostToGo_degCd(open, thickness_m)).toBeCloseTo(expected, 1);
});

test('what is there is not asked for again, white ice counts half, and snow makes it more', () => {
	expect(frostToGo_degCd(BARE, 0.2)).toBe(0);
	expect(frostToGo_degCd({ ...BARE, white_m: 0.1 }, 0.25)).toBe(0);
	expect(frostToGo_degCd({ ...BARE, white_m: 0.1 }, 0.26)).toBeGreaterThan(0);
	const bare = frostToGo_degCd(BARE, 0.25);
	expect(frostToGo_degCd({ ...BARE, snow_m: 0.05 }, 0.25)).toBeGreaterThan(3 * bare);
});
