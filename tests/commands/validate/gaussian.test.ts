import { expect, test } from 'vitest';
import { gaussianCrps, normalCdf, Z90, Z95 } from '../../../src/commands/validate/gaussian.ts';

/** The definition, by the midpoint rule: the integral of (F(x) - [x >= observed])². */
function integratedCrps(mean: number, sigma: number, observed: number): number {
	const from = Math.min(mean, observed) - 10 * sigma;
	const to = Math.max(mean, observed) + 10 * sigma;
	const steps = 200_000;
	const step = (to - from) / steps;
	let cdf = 0;
	let sum = 0;
	for (let i = 0; i < steps; i++) {
		const x = from + (i + 0.5) * step;
		const density = Math.exp(-(((x - mean) / sigma) ** 2) / 2) / (sigma * Math.sqrt(2 * Math.PI));
		cdf += density * step;
		sum += (cdf - density * step * 0.5 - (x >= observed ? 1 : 0)) ** 2 * step;
	}
	return sum;
}

test.each([
	[20, 3, 20],
	[20, 3, 26],
	[20, 3, 11],
	[0, 0.5, 4]
])(
	'the closed form for mean %d, sigma %d, observed %d is the integral of its definition',
	(...of) => {
		expect(gaussianCrps(...of)).toBeCloseTo(integratedCrps(...of), 3);
	}
);

test('without spread the score is the absolute error', () => {
	expect(gaussianCrps(20, 0, 17)).toBe(3);
});

test('the normal distribution meets its tabulated values', () => {
	expect(normalCdf(0)).toBeCloseTo(0.5, 6);
	expect(normalCdf(1)).toBeCloseTo(0.841345, 6);
	expect(normalCdf(-2)).toBeCloseTo(0.02275, 6);
	expect(normalCdf(Z95)).toBeCloseTo(0.95, 6);
	expect(normalCdf(Z90)).toBeCloseTo(0.9, 6);
});
