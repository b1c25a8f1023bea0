import { expect, test } from 'vitest';
import { baselinePredictions } from '../../../src/commands/validate/baseline-spread.ts';
import { baselinesFor } from '../../../src/commands/validate/baselines.ts';
import { gaussianCrps } from '../../../src/commands/validate/gaussian.ts';
import { groupScores } from '../../../src/commands/validate/groups.ts';
import { selectScored } from '../../../src/commands/validate/selection.ts';
import { readTidyFolder } from '../../../src/commands/validate/tidy-folder.ts';
import { inventedFolder } from './tidy-winters.ts';

type Invented = Parameters<typeof inventedFolder>[0];

function predictions(id: string, ...datasets: Invented[]) {
	const { winters } = selectScored(readTidyFolder(inventedFolder(...datasets)));
	const baseline = baselinesFor(winters).find((candidate) => candidate.id === id);
	return baseline ? baselinePredictions(baseline, winters) : [];
}

function estimates_cm(id: string, ...datasets: Invented[]) {
	return predictions(id, ...datasets).map(({ total_m }) => (total_m ?? NaN) * 100);
}

/** At -10 °C the tenth day has 100 degree-days behind it and the fortieth 400. */
const TEN_BELOW = () => -10;
const thawingLate = (on: string) => (on >= '2002-01-05' && on < DAY_40 ? 4 : -10);
const DAY_10 = '2001-12-11';
const DAY_40 = '2002-01-10';

function lake(code: string, ...thicknesses_cm: [day10_cm: number, day40_cm: number]) {
	return {
		code,
		freezeUpOn: '2001-12-01',
		readings: [
			{ on: DAY_10, total_cm: thicknesses_cm[0] },
			{ on: DAY_40, total_cm: thicknesses_cm[1] }
		]
	};
}

test('α = 2.4 gives 24 cm after 100 and 48 cm after 400 degree-days', () => {
	const [day10, day40] = estimates_cm('alpha24', {
		lakes: [lake('A', 20, 30)],
		air_degC: TEN_BELOW
	});
	expect(day10).toBeCloseTo(24);
	expect(day40).toBeCloseTo(48);
});

test('its scores are those worked out by hand', () => {
	const { all } = groupScores(
		predictions('alpha24', { lakes: [lake('A', 20, 30)], air_degC: TEN_BELOW })
	);
	// Errors +4 and +18 cm: root of (16 + 324)/2, mean 11.
	expect(all?.growth.n).toBe(2);
	expect(all?.growth.rmse_cm).toBeCloseTo(13.0384, 3);
	expect(all?.growth.bias_cm).toBeCloseTo(11);
	expect(all?.early).toMatchObject({ n: 1 });
	expect(all?.early.rmse_cm).toBeCloseTo(4);
	expect(all?.decay).toMatchObject({ n: 0, rmse_cm: null, bias_cm: null });
});

test('the mean α of the other lakes counts each lake once', () => {
	// B: α 1.0 and 1.0; C: 2.0 and 2.0, so A is given 1.5.
	const lakes = [lake('A', 20, 50), lake('B', 10, 20), lake('C', 20, 40)];
	const [first, second] = estimates_cm('alphaOtherLakes', { lakes, air_degC: TEN_BELOW });
	expect(first).toBeCloseTo(15);
	expect(second).toBeCloseTo(30);
});

test('a lake alone has no other lakes to go by', () => {
	const lakes = [lake('A', 20, 50)];
	expect(estimates_cm('alphaOtherLakes', { lakes, air_degC: TEN_BELOW })).toEqual([]);
});

test("the lake's own α comes from its other winters only", () => {
	const later = {
		code: 'A',
		freezeUpOn: '2002-12-01',
		readings: [{ on: '2002-12-11', total_cm: 12 }]
	};
	const lakes = [lake('A', 20, 40), later];
	const [first, second, third] = estimates_cm('alphaOwn', { lakes, air_degC: TEN_BELOW });
	expect(first).toBeCloseTo(12);
	expect(second).toBeCloseTo(24);
	expect(third).toBeCloseTo(20);
});

test('from the last reading a thaw takes 0.35 cm a degree-day off what the frost added', () => {
	const other = {
		code: 'A',
		freezeUpOn: '2002-12-01',
		readings: [{ on: '2002-12-11', total_cm: 10 }]
	};
	// From day 10 to day 40: 25 days at -10 °C, 5 days at +4 °C; own α 1.0 from the other winter.
	const invented = { lakes: [lake('A', 12, 15), other], air_degC: thawingLate };
	const grown_cm = Math.sqrt(12 ** 2 + 250);
	expect(estimates_cm('fromLastReading', invented)[0]).toBeCloseTo(grown_cm - 0.35 * 20);
	expect(estimates_cm('fromLastReadingFrostOnly', invented)[0]).toBeCloseTo(grown_cm);
	expect(estimates_cm('lastReading', invented)).toEqual([12]);
});

test('the spread comes from the lakes left out, and gives band, lower bound and CRPS', () => {
	// On B α = 2.4 is off by +14, +28; on C by +4, +8: no error of A itself is in its spread.
	const lakes = [lake('A', 23, 30), lake('B', 10, 20), lake('C', 20, 40)];
	const [first] = predictions('alpha24', { lakes, air_degC: TEN_BELOW });
	const sigma_m = Math.sqrt((14 ** 2 + 28 ** 2 + 4 ** 2 + 8 ** 2) / 4) / 100;
	expect(first?.p10_m).toBeCloseTo(0.24 - 1.281552 * sigma_m, 6);
	expect(first?.p95_m).toBeCloseTo(0.24 + 1.644854 * sigma_m, 6);
	expect(first?.crps_m).toBeCloseTo(gaussianCrps(0.24, sigma_m, 0.23), 9);
});

test('too few readings left out give no spread rather than a guess', () => {
	const [first] = predictions('alpha24', { lakes: [lake('A', 23, 30)], air_degC: TEN_BELOW });
	expect(first).toMatchObject({ p05_m: null, p10_m: null, p95_m: null, crps_m: null });
});
