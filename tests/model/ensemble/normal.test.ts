import { expect, test } from 'vitest';
import { normalQuantile } from '#lib/model/ensemble/normal.ts';

test.each([
	// Inverse of the standard normal distribution by Python's statistics.NormalDist.
	[1e-300, -37.0470962993612],
	[1e-20, -9.262340089798405],
	[1e-9, -5.9978070150076865],
	[0.001, -3.090232306167813],
	[0.05, -1.6448536269514726],
	[0.07, -1.4757910281791702],
	[0.1, -1.2815515655446008],
	[0.3, -0.5244005127080407],
	[0.5, 0],
	[0.8, 0.8416212335729144],
	[0.95, 1.6448536269514715],
	[0.999, 3.090232306167813]
])('the normal quantile of %f is %f', (p, expected) => {
	expect(normalQuantile(p)).toBeCloseTo(expected, 13);
});

test.each([0, 1, -0.1, 1.1, Number.NaN])('no quantile for a probability of %f', (p) => {
	expect(() => normalQuantile(p)).toThrow(RangeError);
});
