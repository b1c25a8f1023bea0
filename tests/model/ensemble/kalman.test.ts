import { expect, test } from 'vitest';
import { assimilate, meanOf } from '#lib/model/ensemble/kalman.ts';
import { normalDraws, seededRandom } from '#lib/model/ensemble/random.ts';

const COUNT = 20_000;

function forecast(mean: number, sd: number) {
	const random = seededRandom(7);
	const values = normalDraws(COUNT, random).map((z) => mean + sd * z);
	return { values, perturbation: normalDraws(COUNT, random) };
}

function spreadOf(values: Float64Array): number {
	const mean = meanOf(values);
	return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
}

test('a forecast of 22 ± 4 and a reading of 18 ± 2.5 make 19.12 ± 2.12, as the scalar filter', () => {
	const { values, perturbation } = forecast(22, 4);
	const measured = { predicted: values.slice(), value: 18, sd: 2.5 };
	assimilate(measured, [{ values, gain: 1 }], perturbation);
	expect(meanOf(values)).toBeCloseTo(19.12, 1);
	expect(Math.abs(spreadOf(values) - 2.12)).toBeLessThan(0.05);
});

test('a thinner and a thicker reading move the mean alike', () => {
	const moved = [18, 26].map((value) => {
		const { values, perturbation } = forecast(22, 4);
		assimilate({ predicted: values.slice(), value, sd: 2.5 }, [{ values, gain: 1 }], perturbation);
		return meanOf(values) - 22;
	});
	expect((moved[0] ?? NaN) + (moved[1] ?? NaN)).toBeCloseTo(0, 1);
});

test('a reading far off moves less than one that is near enough to be believed', () => {
	const moved = [34, 222].map((value) => {
		const { values, perturbation } = forecast(22, 4);
		assimilate({ predicted: values.slice(), value, sd: 2.5 }, [{ values, gain: 1 }], perturbation);
		return meanOf(values) - 22;
	});
	expect(moved[1]).toBeLessThan(moved[0] ?? NaN);
});

test('a quantity of gain zero stays as it was', () => {
	const { values, perturbation } = forecast(22, 4);
	const before = values.slice();
	assimilate({ predicted: values.slice(), value: 18, sd: 1 }, [{ values, gain: 0 }], perturbation);
	expect(values).toEqual(before);
});
