import { expect, test } from 'vitest';
import { conductedHeat_W_m2, cover_m2K_W, frostToReach_degCd } from '#lib/model/conduction.ts';
import { grownClear_m, STEFAN_m2_degCd } from '#lib/model/conduction.ts';
import { CLEAR_ICE_FUSION_J_m3, DAY_s } from '#lib/model/constants.ts';
import { airMelt_m, exchangeAsMelt_m_degCd } from '#lib/model/decay.ts';
import { dayDegrees } from '#lib/model/degree-days.ts';
import { grossDegreeDays, lebedev_m, netFreezing_degCd } from '#lib/model/empirical-laws.ts';
import { stefan_m, zubov_m } from '#lib/model/empirical-laws.ts';
import { buoyancy_kg_m2, floodedSlush_m, freeboard_m } from '#lib/model/flooding.ts';
import { shallowWave_m_s, spread_m } from '#lib/model/ice-plate.ts';
import { frostToFreeze_degCd } from '#lib/model/slush.ts';
import { landSnow_W_mK } from '#lib/model/snow.ts';
import { celsius, degreeDays_degCd, degreeDays_degFd, INCH_m } from '#lib/model/units.ts';
import { meltCoefficient_in, stefanCoefficient_cm } from '#lib/model/units.ts';
import { stefanCoefficient_in } from '#lib/model/units.ts';
import { currentExchange_W_m2K, rainMelt_m } from '#lib/model/water-heat.ts';
import { weatherDay } from '../support/weather-day.ts';

/**
 * Published tables and worked examples, and values computed from stated inputs. The number of a row is
 * its name; the tag says how far it is confirmed, see references.md beside the model.
 */
interface CheckValue {
	row: string;
	actual: number;
	expected: number;
	/** Absolute. */
	tolerance: number;
	basis: string;
}

const WEEK_degC = [-5, -8, 2, 4, -10, 20, -3];
const FLOODING_ICE_kg_m3 = 917;
const SNOW_250_W_mK = landSnow_W_mK(250);

/** A day of which only the extremes are known, and both below freezing. */
function extremes(min_degC: number, max_degC: number): number {
	const day = { ...weatherDay('2026-01-15'), air_degC: null, min_degC, max_degC };
	return dayDegrees(day, 46)?.freezing_degCd ?? NaN;
}

function bare_cm(freezing_degCd: number, exchange_W_m2K: number, start_m = 0): number {
	return 100 * grownClear_m(start_m, freezing_degCd, 1 / exchange_W_m2K);
}

function heat_W_m2(snow_m: number): number {
	return conductedHeat_W_m2(-10, 0.2, cover_m2K_W(snow_m, SNOW_250_W_mK, 0, 20));
}

function growth_mm_d(flux_W_m2: number): number {
	return (1000 * flux_W_m2 * DAY_s) / CLEAR_ICE_FUSION_J_m3;
}

function buoyancy(clear_m: number): number {
	return buoyancy_kg_m2(clear_m, 0, 0, 1000, FLOODING_ICE_kg_m3);
}

const net = netFreezing_degCd(WEEK_degC);
const gross = grossDegreeDays(WEEK_degC);
const fiveSteps_cm = [1, 2, 3, 4, 5].reduce((h_cm) => bare_cm(10, 20, h_cm / 100), 0);

const CHECKS: CheckValue[] = [
	check('1', extremes(-12, -2), 7, 1e-9, 'degree-days by definition [R2]'),
	check('2 °F', 32 - 19, 13, 0.001, 'mean of 28 and 10 °F [C]'),
	check('2 °C', extremes(celsius(10), celsius(28)), 7.222, 0.001, 'the same in °C [C]'),
	check('2 back', degreeDays_degCd(13), 7.222, 0.001, 'the same as a sum [C]'),
	...[5, 13, 11, 7, 17, 0, 3].map((expected, i) =>
		check(`3 day ${i + 1}`, net[i] ?? NaN, expected, 0, 'net, floored at zero [M-med]')
	),
	check('4 frost', gross.freezing_degCd, 26, 0, 'gross [C]'),
	check('4 thaw', gross.thawing_degCd, 26, 0, 'gross [C]'),
	check('5', degreeDays_degFd(100), 180, 0, 'units [C]'),
	check('6', 100 * Math.sqrt(STEFAN_m2_degCd), 3.5569, 0.001, '[Stefan1891] constants [R]'),
	check('7', stefanCoefficient_cm(0.8), 2.726, 0.001, 'units [C]'),
	check('8', stefanCoefficient_in(2.4), 0.704, 0.001, 'units [C]'),
	check('9', 100 * stefan_m(2, 100), 20, 0.001, '[Stefan1891] [C]'),
	check('10', 100 * stefan_m(2.7, 500), 60.37, 0.01, '[USACE2002] windy lake [T]'),
	check(
		'11',
		stefan_m(stefanCoefficient_cm(0.6), 400 / 1.8) / INCH_m,
		12,
		0.001,
		'[USACE2002] [T]'
	),
	check('12', bare_cm(10, 20), 4.67, 0.01, '[Ashton1989] constants [R]'),
	check('13', bare_cm(50, 20), 16.33, 0.01, '[Ashton1989] [C]'),
	check('14', fiveSteps_cm, bare_cm(50, 20), 1e-9, 'five steps are one, exact in frost [C]'),
	check('15', bare_cm(100, 10), 19.63, 0.01, '[Ashton1989] [C]'),
	check('16', frostToReach_degCd(0.1, 20), 25.6, 0.1, '[Ashton1989] solved for frost [C]'),
	check('17', bare_cm(100, 1e9), 35.57, 0.01, 'no air film: [Stefan1891] [C]'),
	check('18', 100 * lebedev_m(500), 48.89, 0.02, '[Lebedev1938] [R2]'),
	check('19', 100 * zubov_m(500), 43.01, 0.01, '[Zubov1945] [R]'),
	check('20 at 250', landSnow_W_mK(250), 0.0876, 0.0002, '[Sturm1997] [T]'),
	check('20 at 100', landSnow_W_mK(100), 0.0464, 0.0002, '[Sturm1997] [T]'),
	check('20 at 400', landSnow_W_mK(400), 0.2513, 0.0002, '[Sturm1997] [T]'),
	check('21 above', landSnow_W_mK(156), 0.0591, 0.0001, '[Sturm1997] quadratic branch [C]'),
	check('21 below', landSnow_W_mK(156 - 1e-9), 0.0595, 0.0001, '[Sturm1997] linear branch [C]'),
	check('22 heat', heat_W_m2(0), 71.79, 0.05, 'layers in series [C]'),
	check('22 growth', growth_mm_d(heat_W_m2(0)), 20.28, 0.05, 'layers in series [C]'),
	check('23 growth', growth_mm_d(heat_W_m2(0.1)), 2.204, 0.005, 'layers in series [C]'),
	check(
		'23 top of ice',
		-10 + heat_W_m2(0.1) * cover_m2K_W(0.1, SNOW_250_W_mK, 0, 20),
		-0.697,
		0.005,
		'layers in series [C]'
	),
	check('24', (100 * buoyancy(0.2)) / 250, 6.64, 0.01, 'Archimedes [C]'),
	check('25', (100 * buoyancy(0.3)) / 100, 24.9, 0.01, 'Archimedes [C]'),
	check('26', 100 * freeboard_m(buoyancy(0.2), 0), 1.66, 0.001, 'Archimedes [C]'),
	check(
		'27',
		100 * floodedSlush_m(50, buoyancy(0.2), 250, FLOODING_ICE_kg_m3),
		12.25,
		0.01,
		'Archimedes, derived [C]'
	),
	check('28', frostToFreeze_degCd(0.1, 0.6, 1 / 20) / 10, 1.74, 0.002, 'derived [C]'),
	check('29', frostToFreeze_degCd(0.1, 0.6, 1 / 20 + 0.1 / 0.0876) / 10, 28.2, 0.1, 'derived [C]'),
	check('30', 100 * airMelt_m(0.006, 20), -12, 1e-9, 'degree-day melt [M-med]'),
	check('31', 100 * exchangeAsMelt_m_degCd(20), 0.565, 0.001, 'heat balance [C]'),
	check('32', meltCoefficient_in(0.6), 0.1312, 0.0001, 'units [C]'),
	check('33', 1000 * rainMelt_m(0.01, 5), 0.684, 0.005, 'heat balance, 4186 J/kgK [C]'),
	check('34', currentExchange_W_m2K(0.5, 2), 811, 1, '[Ashton1986] [M-hi]'),
	check('43 m/s', shallowWave_m_s(2), 4.43, 0.01, '[Squire1996] [C]'),
	check('43 km/h', 3.6 * shallowWave_m_s(2), 15.9, 0.1, '[Squire1996] [C]'),
	check('44', spread_m(0.3), 6.27, 0.02, '[Squire1996] [C]'),
	check('47', 100 * stefan_m(1.6, 50, 0.15), 18.79, 0.01, 're-anchored at a reading [C]')
];

test.each(CHECKS)('check value $row: $basis', ({ actual, expected, tolerance }) => {
	expect(Math.abs(actual - expected)).toBeLessThanOrEqual(tolerance);
});

const FILM_TABLE_cm: [frost_degCd: number, h10: number, h15: number, h20: number, h30: number][] = [
	[5, 1.37, 1.99, 2.54, 3.44],
	[20, 5.07, 6.88, 8.25, 10.11],
	[100, 19.63, 23.64, 26.09, 28.88],
	[500, 60.23, 65.99, 69.12, 72.42],
	[1000, 92.29, 98.53, 101.84, 105.26]
];

test.each(FILM_TABLE_cm)(
	'bare ice after %d °C·d of frost, four air films [Ashton1989]',
	(frost, ...row) => {
		const films_W_m2K = [10, 15, 20, 30];
		row.forEach((expected, i) =>
			expect(bare_cm(frost, films_W_m2K[i] ?? NaN)).toBeCloseTo(expected, 1.9)
		);
	}
);

function check(
	row: string,
	actual: number,
	expected: number,
	tolerance: number,
	basis: string
): CheckValue {
	return { row, actual, expected, tolerance, basis };
}
