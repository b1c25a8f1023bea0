import { expect, test } from 'vitest';
import { tenthsOf } from '../../../../src/commands/validate/pictures/rank-histogram.ts';
import { stepsOf } from '../../../../src/commands/validate/pictures/reliability.ts';

const EVEN = Array.from({ length: 200 }, (_, index) => (index + 0.5) / 200);

test('ranks spread evenly lie on the line, none of them outside what chance allows', () => {
	const steps = stepsOf(EVEN);
	expect(steps).toHaveLength(19);
	for (const { quantile, share, low, high, isOutside } of steps) {
		expect(share).toBeCloseTo(quantile, 9);
		expect(low).toBeLessThan(quantile);
		expect(high).toBeGreaterThan(quantile);
		expect(isOutside).toBe(false);
	}
});

test('ice thinner than foretold lies above the line, and outside', () => {
	const low = stepsOf(EVEN.map((rank) => rank ** 2)).find(({ quantile }) => quantile === 0.1);
	// √0.1 = 0.316 of the ranks are under 0.1.
	expect(low?.share).toBeCloseTo(0.315, 2);
	expect(low?.isOutside).toBe(true);
});

test('tenths share out all ranks, the ends included', () => {
	expect(tenthsOf([0, 0.05, 0.1, 0.99, 1])).toEqual([0.4, 0.2, 0, 0, 0, 0, 0, 0, 0, 0.4]);
	for (const part of tenthsOf(EVEN)) expect(part).toBeCloseTo(0.1, 9);
});

test('of no ranks there is nothing to draw', () => {
	expect(stepsOf([])).toEqual([]);
	expect(tenthsOf([])).toEqual([]);
});
