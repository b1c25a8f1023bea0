import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sorterOf } from '#lib/model/ensemble/sorted.ts';

const COUNT = 200;
const sort = sorterOf(COUNT);
const RANKS = [0, 9, 10, 99, 100, COUNT - 1];

const values = (each: fc.Arbitrary<number>) =>
	fc
		.array(each, { minLength: COUNT, maxLength: COUNT })
		.map((numbers) => Float64Array.from(numbers));

test.each([
	['scattered', fc.double({ min: 0, max: 3, noNaN: true })],
	[
		'mostly zero',
		fc.oneof(fc.constant(0), fc.constant(0), fc.double({ min: 0, max: 1, noNaN: true }))
	],
	['few and equal', fc.integer({ min: -2, max: 2 })],
	['of very different size', fc.double({ min: 1e-9, max: 1e9, noNaN: true })]
])('values that are %s come out as the built-in sort has them', (_, each) => {
	fc.assert(
		fc.property(values(each), (numbers) => {
			// Adding zero makes one of the two zeros, which the built-in sort tells apart.
			const plain = numbers.map((value) => value + 0);
			const sorted = plain.toSorted();
			expect(sort(plain)).toEqual(sorted);
			const around = sort.around(plain, RANKS);
			expect(RANKS.map((rank) => around[rank])).toEqual(RANKS.map((rank) => sorted[rank]));
		}),
		{ numRuns: 100, seed: 5 }
	);
});

test('values that crowd in one place far from an outlier are sorted too', () => {
	const crowded = Float64Array.from({ length: COUNT }, (_, i) => ((i * 7919) % COUNT) * 1e-9);
	crowded[3] = 5;
	expect(sort(crowded)).toEqual(crowded.toSorted());
	expect(sort.around(crowded, [50])[50]).toBe(crowded.toSorted()[50]);
});

test('what is given stays as it was, and what was returned does too', () => {
	const given = Float64Array.from({ length: COUNT }, (_, i) => (i * 37) % COUNT);
	const kept = given.slice();
	const first = sort(given);
	const copy = first.slice();
	sort(given.map((value) => -value));
	expect(given).toEqual(kept);
	expect(first).toEqual(copy);
	expect(sort(given.fill(2))).not.toBe(given);
});

test('around a rank only what stands there is in order: it takes less work', () => {
	const mixed = Float64Array.from({ length: COUNT }, (_, i) => (i * 37) % COUNT);
	const around = sort.around(mixed, [20, 21]);
	expect(around.slice(20, 22)).toEqual(Float64Array.of(20, 21));
	expect(around).not.toEqual(mixed.toSorted());
});

test('none and one are sorted', () => {
	expect(sorterOf(0)(new Float64Array())).toEqual(new Float64Array());
	expect(sorterOf(1)(Float64Array.of(4))).toEqual(Float64Array.of(4));
});
