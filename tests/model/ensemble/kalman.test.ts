import { expect, test } from 'vitest';
import { assimilate, meanOf } from '#lib/model/ensemble/kalman.ts';
import { normalDraws, seededRandom } from '#lib/model/ensemble/random.ts';
import { mean, spread } from '../../support/invented-ensemble.ts';

const COUNT = 20_000;

/** Members of a normal forecast, a perturbation, and further normal deviates. */
function normals(seed: number) {
	const random = seededRandom(seed);
	const draws = () => normalDraws(COUNT, random);
	return { forecast: draws(), perturbation: draws(), other: draws() };
}

/** Members at 22 ± 4 after one reading. */
function after(value: number, sd: number): { values: Float64Array; off: number } {
	const { forecast, perturbation } = normals(1);
	const values = forecast.map((z) => 22 + 4 * z);
	const measured = { predicted: values.slice(), value, sd };
	return { values, off: assimilate(measured, [{ values, gain: 1 }], perturbation) };
}

test('a forecast of 22 ± 4 and a reading of 18 ± 2.5 make 19.12 ± 2.12', () => {
	// The scalar Kalman filter, ice-science 7.5 (a): K 0.7191, computed [C].
	const { values, off } = after(18, 2.5);
	expect(Math.abs(mean(values) - 19.12)).toBeLessThan(0.04);
	expect(Math.abs(spread(values) - 2.12)).toBeLessThan(0.04);
	expect(off).toBeCloseTo(-4 / Math.hypot(4, 2.5), 3);
});

test('what is so much thicker moves members as far as what is so much thinner', () => {
	for (const away of [2, 8, 14]) {
		const up = mean(after(22 + away, 2.5).values) - 22;
		const down = 22 - mean(after(22 - away, 2.5).values);
		expect(up).toBeGreaterThan(0);
		expect(Math.abs(up - down)).toBeLessThan(0.01);
	}
});

test('to three standard deviations a reading counts in full, far beyond hardly at all', () => {
	const gain = 4 ** 2 / (4 ** 2 + 2.5 ** 2);
	const moved = (away: number) => mean(after(22 + away, 2.5).values) - 22;
	expect(moved(14)).toBeCloseTo(gain * 14, 1);
	expect(moved(60)).toBeLessThan(moved(14));
	expect(moved(1000)).toBeLessThan(0.1);
});

test('far below what was expected a reading counts in full', () => {
	const gain = 4 ** 2 / (4 ** 2 + 2.5 ** 2);
	expect(22 - mean(after(2, 2.5).values)).toBeCloseTo(gain * 20, 1);
});

test('a quantity moves by its regression on what was measured, times its gain', () => {
	const { forecast, perturbation, other } = normals(2);
	const predicted = forecast.map((z) => 10 + 2 * z);
	// slope of half upon the measured: cov 2, variance 4
	const related = forecast.map((z, i) => z + (other[i] ?? 0));
	const careful = related.slice();
	const unrelated = other.slice();
	const held = forecast.slice();
	assimilate(
		{ predicted, value: 13, sd: 1 },
		[
			{ values: related, gain: 1 },
			{ values: careful, gain: 0.15 },
			{ values: unrelated, gain: 1 },
			{ values: held, gain: 0 }
		],
		perturbation
	);
	expect(Math.abs(mean(related) - (2 / 5) * 3)).toBeLessThan(0.05);
	expect(Math.abs(mean(careful) - 0.15 * (2 / 5) * 3)).toBeLessThan(0.01);
	expect(Math.abs(mean(unrelated))).toBeLessThan(0.05);
	expect(held).toEqual(forecast);
});

test('members that all agree are not moved, and nothing is NaN', () => {
	const values = new Float64Array(50).fill(0.3);
	const measured = { predicted: values.slice(), value: 0.5, sd: 0.02 };
	const off = assimilate(measured, [{ values, gain: 1 }], normalDraws(50, seededRandom(1)));
	expect(values).toEqual(new Float64Array(50).fill(0.3));
	expect(off).toBeCloseTo(10, 6);
});

test('the mean of no members is zero', () => {
	expect(meanOf(new Float64Array())).toBe(0);
	expect(meanOf(Float64Array.of(1, 2, 6))).toBe(3);
});
