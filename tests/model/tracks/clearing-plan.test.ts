import { expect, test } from 'vitest';
import { clearByPlan, isPlanned } from '#lib/model/tracks/clearing-plan.ts';
import { openSite } from '#lib/model/site-ice.ts';

const PLAN = { from: '2027-01-16', left_m: 0.02, afterSnow_m: 0.05 };

function snow(snow_m: number) {
	return { ...openSite(), clear_m: 0.3, snow_m, snowDensity_kg_m3: 150 };
}

test('on its first day all is cleared but what is left, later only what is too much', () => {
	const left = (snow_m: number, on: string, plan = PLAN) => {
		const ice = snow(snow_m);
		clearByPlan(ice, plan, on);
		return ice.snow_m;
	};
	expect(left(0.03, '2027-01-16')).toBe(0.02);
	expect(left(0.01, '2027-01-16')).toBe(0.01);
	expect(left(0.07, '2027-01-17')).toBe(0.07);
	expect(left(0.071, '2027-01-17')).toBe(0.02);
});

test('a plan acts from its first day on, once where it is not to be cleared again', () => {
	const days = ['2027-01-15', '2027-01-16', '2027-01-17'];
	expect(days.map((on) => isPlanned(PLAN, on))).toEqual([false, true, true]);
	const once = { ...PLAN, afterSnow_m: null };
	expect(days.map((on) => isPlanned(once, on))).toEqual([false, true, false]);
	expect(isPlanned(undefined, '2027-01-16')).toBe(false);
});
