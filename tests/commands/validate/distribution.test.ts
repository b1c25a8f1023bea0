import { expect, test } from 'vitest';
import { normalQuantile } from '#lib/model/ensemble/normal.ts';
import { ensembleCrps, quantileOf, rankOf } from '../../../src/commands/validate/distribution.ts';
import { gaussianCrps } from '../../../src/commands/validate/gaussian.ts';

test('quantiles run straight between neighbours', () => {
	const sorted = [1, 2, 4, 8, 16];
	expect([0, 0.25, 0.5, 0.625, 1].map((share) => quantileOf(sorted, share))).toEqual([
		1, 2, 4, 6, 16
	]);
	expect(quantileOf([3], 0.1)).toBe(3);
	expect(() => quantileOf([], 0.5)).toThrow('no quantile 0.5 of 0 values');
});

test('the crps of an ensemble agrees with the double sum of its definition', () => {
	const sorted = [0.1, 0.15, 0.15, 0.4, 0.9];
	const observed = 0.3;
	const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
	const away = mean(sorted.map((x) => Math.abs(x - observed)));
	const apart = mean(sorted.flatMap((x) => sorted.map((y) => Math.abs(x - y))));
	expect(ensembleCrps(sorted, observed)).toBeCloseTo(away - apart / 2, 12);
});

test('the crps of one member is its absolute error', () => {
	expect(ensembleCrps([0.25], 0.4)).toBeCloseTo(0.15, 12);
});

test('the crps of many normal members is that of the Gaussian', () => {
	const members = Float64Array.from(
		{ length: 2000 },
		(_, i) => 0.3 + 0.05 * normalQuantile((i + 0.5) / 2000)
	);
	for (const observed of [0.2, 0.31, 0.45])
		expect(ensembleCrps(members, observed)).toBeCloseTo(gaussianCrps(0.3, 0.05, observed), 4);
});

test('the rank of what was observed is the share whose quantile it is', () => {
	const sorted = [1, 2, 4, 8, 16];
	for (const share of [0.1, 0.25, 0.5, 0.9]) {
		expect(rankOf(sorted, quantileOf(sorted, share))).toBeCloseTo(share, 12);
	}
	expect([0, 1, 16, 17].map((observed) => rankOf(sorted, observed))).toEqual([0, 0, 1, 1]);
});

test('among members without ice a reading without ice ranks lowest', () => {
	expect(rankOf([0, 0, 0, 0.1], 0)).toBe(0);
	expect(rankOf([0, 0], 0.2)).toBe(1);
});
