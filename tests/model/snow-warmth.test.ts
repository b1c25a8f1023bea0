import { expect, test } from 'vitest';
import { snowWarmth } from '#lib/model/snow-warmth.ts';

const AIR_degC = [-60, -40, -30, -20, -10, -5, -1, 0];

test('snow conducts as the law says at the temperature it was measured at, half that of the air', () => {
	expect(snowWarmth(2 * -14.6)).toBeCloseTo(1, 12);
});

test('the milder the air the better snow conducts, and in a thaw no better than at 0 °C', () => {
	const warmth = AIR_degC.map(snowWarmth);
	expect(warmth).toEqual(warmth.toSorted((a, b) => a - b));
	expect(new Set(warmth).size).toBe(AIR_degC.length);
	expect(snowWarmth(8)).toBe(snowWarmth(0));
});

test('vapour adds no more than half of what dry conduction does [Fourteau2021]', () => {
	const without = snowWarmth(-1000);
	for (const air_degC of AIR_degC) {
		expect(snowWarmth(air_degC) / without).toBeGreaterThan(1);
		expect(snowWarmth(air_degC) / without).toBeLessThanOrEqual(1.5);
	}
});

test('what vapour adds falls with cold as the slope of saturated vapour over ice does', () => {
	// Magnus' formula over ice, 6.112 hPa exp(22.46 t/(272.62 + t)), as density by the gas law.
	const vapour_kg_m3 = (t: number) =>
		(611.2 * Math.exp((22.46 * t) / (272.62 + t))) / (461.5 * (t + 273.15));
	const slope = (t: number) => vapour_kg_m3(t + 0.05) - vapour_kg_m3(t - 0.05);
	const added = (snow_degC: number) => snowWarmth(2 * snow_degC) / snowWarmth(-1000) - 1;
	for (const snow_degC of [-5, -10, -15, -20]) {
		const expected = slope(snow_degC) / slope(0);
		expect(added(snow_degC) / added(0)).toBeGreaterThan(0.93 * expected);
		expect(added(snow_degC) / added(0)).toBeLessThan(1.07 * expected);
	}
});
