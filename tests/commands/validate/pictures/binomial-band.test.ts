import { binomialDistribution } from 'simple-statistics';
import { expect, test } from 'vitest';
import { binomialBand } from '../../../../src/commands/validate/pictures/binomial-band.ts';

test('of 20 tosses 6 to 14 heads are what chance allows', () => {
	// P(X <= 5) = 0.0207, P(X <= 6) = 0.0577, P(X <= 13) = 0.9423, P(X <= 14) = 0.9793: any table.
	expect(binomialBand(20, 0.5)).toEqual({ low: 0.3, high: 0.7 });
});

test.each([
	[10, 0.1],
	[39, 0.05],
	[118, 0.9],
	[516, 0.35]
])('of %i readings at a chance of %d it agrees with sums of another library', (count, share) => {
	const chances = binomialDistribution(count, share);
	const quantile = (wanted: number) => {
		let below = 0;
		return chances?.findIndex((chance) => (below += chance) >= wanted);
	};
	const { low, high } = binomialBand(count, share);
	expect(low * count).toBeCloseTo(quantile(0.05) ?? NaN, 6);
	expect(high * count).toBeCloseTo(quantile(0.95) ?? NaN, 6);
});

test('many readings at a high chance do not run out of numbers', () => {
	const { low, high } = binomialBand(20_000, 0.95);
	// Normal approximation: 0.95 ± 1.645 √(0.95·0.05/20000) = 0.95 ± 0.0025.
	expect(low).toBeCloseTo(0.9475, 3);
	expect(high).toBeCloseTo(0.9525, 3);
});

test('no readings, and what is certain, have no band about them', () => {
	expect(binomialBand(0, 0.3)).toEqual({ low: 0.3, high: 0.3 });
	expect(binomialBand(9, 1)).toEqual({ low: 1, high: 1 });
});
