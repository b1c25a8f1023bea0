import { expect, test } from 'vitest';
import { elasticSag_m, spread_m } from '#lib/model/ice-plate.ts';
import { LOADED_m_s, pace_m_s } from '#lib/model/moving/pace.ts';
import { spacing_m } from '#lib/model/moving/spacing.ts';
import { waveSpeed_m_s } from '#lib/model/moving/wave-speed.ts';
import { creepFactor } from '#lib/model/parked/creep.ts';
import { INCH_m } from '#lib/model/units.ts';

/** A floating plate of 6 GPa and ν 0.33, worked out apart from this project [C]; [Squire1996] [M-hi]. */
test.each([
	[0.1, 2.75, 3.3],
	[0.2, 4.63, 1.2],
	[0.3, 6.27, 0.64],
	[0.4, 7.78, 0.41],
	[0.5, 9.2, 0.3]
])('%d m of ice spreads a load over %d m and gives %d cm under 2000 kg', (h_m, spread, sag_cm) => {
	expect(Math.abs(spread_m(h_m) - spread)).toBeLessThanOrEqual(0.02);
	expect(Math.abs(100 * elasticSag_m(2000, h_m) - sag_cm)).toBeLessThanOrEqual(0.05);
});

/** Critical speed in km/h by water depth for 20, 30 and 50 cm of ice [C]; [Squire1996] [M-hi]. */
test.each([
	[1, 11, 11, 11],
	[2, 16, 16, 16],
	[3, 19, 20, 20],
	[5, 25, 25, 25],
	[10, 31, 33, 35],
	[20, 32, 37, 43]
])('over %d m of water the wave runs at %d, %d and %d km/h', (depth_m, ...expected) => {
	[0.2, 0.3, 0.5].forEach((h_m, index) => {
		const off = 3.6 * waveSpeed_m_s(depth_m, h_m) - (expected[index] ?? NaN);
		expect(Math.abs(off)).toBeLessThanOrEqual(0.5);
	});
});

/**
 * Over deep water 2 (D g³ / 27 ρ_w)^⅛ in closed form [C]. With D = E h³ / 12 (1 - ν²), E = 6 GPa, ν = 0.33.
 */
test.each([0.1, 0.3, 0.6])('over deep water %d m of ice has the wave of the closed form', (h_m) => {
	const stiffness = (6e9 * h_m ** 3) / (12 * (1 - 0.33 ** 2));
	const deep_m_s = 2 * ((stiffness * 9.81 ** 3) / (27 * 1000)) ** 0.125;
	expect(waveSpeed_m_s(500, h_m)).toBeCloseTo(deep_m_s, 4);
});

/**
 * Thickness in inches and spacing in feet, tracked and wheeled, as TM 5-852-1 table 2-1 has them for the
 * warmer of its two columns [R].
 */
test.each([
	[10, 50],
	[12, 65],
	[16, 80],
	[18, 80],
	[20, 100],
	[22, 115],
	[25, 130],
	[27, 130],
	[30, 150],
	[7, 50],
	[9, 50],
	[13, 105],
	[15, 115]
])('on %d inches the spacing is no less than the %d feet of the table', (ice_in, apart_ft) => {
	expect(spacing_m(ice_in * INCH_m)).toBeGreaterThanOrEqual(apart_ft * 12 * INCH_m);
});

test('no pace is faster than practice, 25 km/h [R2], nor than half of the wave', () => {
	expect(3.6 * pace_m_s(40, 2)).toBeCloseTo(25, 9);
	expect(pace_m_s(3, 0.3)).toBeCloseTo(waveSpeed_m_s(3, 0.3) / 2, 9);
	expect(pace_m_s(1000, 5)).toBe(LOADED_m_s);
});

/**
 * Glen's law for uniaxial load, ε' = 2/9 A σ³, at 0 °C with A = 2.4e-24 1/(s Pa³) [CuffeyPaterson2010]
 * [M-hi] under 0.3 MPa: time in which creep is as much as E = 6 GPa gives at once. [C]
 */
test('ice is taken to creep at least three times as fast as old ice at its melting point flows', () => {
	const stress_Pa = 3e5;
	const rate_1_s = (2 / 9) * 2.4e-24 * stress_Pa ** 3;
	const relaxes_h = stress_Pa / 6e9 / rate_1_s / 3600;
	expect(relaxes_h).toBeCloseTo(0.96, 1);
	expect(creepFactor(relaxes_h / 3)).toBeGreaterThan(Math.SQRT2);
});
