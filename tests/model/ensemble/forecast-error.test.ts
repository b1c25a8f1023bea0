import { expect, test } from 'vitest';
import { drawForecastErrors, errorSpread_K } from '#lib/model/ensemble/forecast-error.ts';
import { seededRandom } from '#lib/model/ensemble/random.ts';
import { meanOf, spreadOf } from '../../support/invented-climate.ts';

test.each([
	// 1.25 times the mean absolute error of ice-science 7.3: 1.5, 2.2, 2.9, 3.6, 4.65 K.
	[1, 1.875],
	[3, 2.75],
	[5, 3.625],
	[7, 4.5],
	[10, 5.8125],
	[12, 6]
])('the error %i days ahead has a spread of %f K', (lead_d, expected) => {
	expect(errorSpread_K(lead_d)).toBeCloseTo(expected, 9);
});

test('drawn errors have that spread on each day, and no bias', () => {
	const { air_K } = drawForecastErrors(2000, seededRandom(1));
	expect(air_K).toHaveLength(10);
	air_K.forEach((errors, index) => {
		const spread = errorSpread_K(index + 1);
		expect(Math.abs(meanOf([...errors]))).toBeLessThan(0.03 * spread);
		expect(spreadOf([...errors]) / spread).toBeGreaterThan(0.95);
		expect(spreadOf([...errors]) / spread).toBeLessThan(1.05);
	});
});

test('an error keeps 0.7 of itself overnight, 0.49 over two nights', () => {
	const { air_K } = drawForecastErrors(4000, seededRandom(2));
	expect(correlation(air_K[3], air_K[4])).toBeCloseTo(0.7, 1);
	expect(correlation(air_K[3], air_K[5])).toBeCloseTo(0.49, 1);
});

test('amounts err by a factor of 1 in the mean that is never negative', () => {
	const { fallFactor } = drawForecastErrors(4000, seededRandom(3));
	for (const factors of fallFactor) {
		expect(meanOf([...factors])).toBeCloseTo(1, 1);
		expect(Math.min(...factors)).toBeGreaterThan(0);
	}
	expect(spreadOf([...(fallFactor[9] ?? [])])).toBeGreaterThan(
		spreadOf([...(fallFactor[0] ?? [])])
	);
});

function correlation(a: Float64Array | undefined, b: Float64Array | undefined): number {
	if (a === undefined || b === undefined) throw new Error('no such lead');
	const products = [...a].map((value, i) => value * (b[i] ?? 0));
	return meanOf(products) / (spreadOf([...a]) * spreadOf([...b]));
}
