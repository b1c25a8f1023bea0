import { expect, test } from 'vitest';
import { clearSky_W_m2, noonSunHeight } from '#lib/model/sun.ts';

/** 1 MJ/m² a day. */
const MJ_W_m2 = 1e6 / 86_400;

test('the sun outside the atmosphere agrees with a worked example of [Allen1998]', () => {
	// FAO 56, example 8: 20° S on 3 September, 32.2 MJ/m² a day, of which 0.75 reach the ground [M-hi].
	expect(Math.abs(clearSky_W_m2(-20, 246) / MJ_W_m2 - 0.75 * 32.2)).toBeLessThan(0.15);
});

test('polar night is dark and polar day is not', () => {
	expect(clearSky_W_m2(75, 355)).toBe(0);
	expect(noonSunHeight(75, 355)).toBe(0);
	expect(clearSky_W_m2(75, 172)).toBeGreaterThan(300);
});

test('spring sun passes the 150 W/m² of the thaw rule in early February at 40° and in March at 60°', () => {
	expect(clearSky_W_m2(40, 15)).toBeLessThan(150);
	expect(clearSky_W_m2(40, 46)).toBeGreaterThan(150);
	expect(clearSky_W_m2(60, 60)).toBeLessThan(150);
	expect(clearSky_W_m2(60, 85)).toBeGreaterThan(150);
});

test('thin air of a high lake lets more through', () => {
	expect(clearSky_W_m2(46, 60, 2500) / clearSky_W_m2(46, 60)).toBeCloseTo(0.8 / 0.75, 9);
});
