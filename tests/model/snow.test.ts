import { expect, test } from 'vitest';
import { addSnow, freshSnow_kg_m3, landSnow_W_mK, pack, removeSnow } from '#lib/model/snow.ts';
import { settle, snowMass_kg_m2, snowShare, unsettledFraction } from '#lib/model/snow.ts';
import type { Snow } from '#lib/model/snow.ts';

const layer = (): Snow => ({ snow_m: 0.2, snowDensity_kg_m3: 100 });

test('snow settles from 100 to 143 in a day, 203 in three and 263 in a week [Verseghy1991]', () => {
	const expected: [days: number, density: number][] = [
		[1, 143],
		[3, 203],
		[7, 263]
	];
	for (const [days, density] of expected) {
		const snow = layer();
		settle(snow, 300, unsettledFraction(100, 24 * days));
		expect(snow.snowDensity_kg_m3).toBeCloseTo(density, -0.3);
		expect(snowMass_kg_m2(snow)).toBeCloseTo(20, 12);
	}
});

test('snow denser than settled snow does not swell', () => {
	const snow: Snow = { snow_m: 0.1, snowDensity_kg_m3: 400 };
	settle(snow, 300, unsettledFraction(100, 240));
	pack(snow, 10, 350);
	expect(snow).toEqual({ snow_m: 0.1, snowDensity_kg_m3: 400 });
});

test('new snow adds mass and depth', () => {
	const snow = layer();
	addSnow(snow, 10, 50);
	expect(snow.snow_m).toBeCloseTo(0.4, 12);
	expect(snowMass_kg_m2(snow)).toBeCloseTo(30, 12);
});

test('packing a part of the snow keeps its mass, and cannot pack more than there is', () => {
	const half = layer();
	pack(half, 10, 400);
	expect(half.snowDensity_kg_m3).toBe(250);
	expect(snowMass_kg_m2(half)).toBeCloseTo(20, 12);
	const whole = layer();
	pack(whole, 999, 400);
	expect(whole.snowDensity_kg_m3).toBe(400);
});

test('taking more snow than there is leaves none', () => {
	const snow = layer();
	removeSnow(snow, 25);
	expect(snow.snow_m).toBe(0);
});

test('fresh snow is 50 to 100 kg/m³ in the cold and denser near freezing', () => {
	expect(freshSnow_kg_m3(-15)).toBeGreaterThan(50);
	expect(freshSnow_kg_m3(-15)).toBeLessThan(100);
	expect(freshSnow_kg_m3(0)).toBeCloseTo(119, 0);
	expect(freshSnow_kg_m3(5)).toBe(freshSnow_kg_m3(0));
});

test('precipitation is all snow in frost, half at 1 °C, none from 2 °C', () => {
	expect([-5, 0, 1, 2, 9].map(snowShare)).toEqual([1, 1, 0.5, 0, 0]);
});

test('conductivity stays at its last published value in denser snow', () => {
	expect(landSnow_W_mK(700)).toBe(landSnow_W_mK(600));
});
