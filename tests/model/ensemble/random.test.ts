import { expect, test } from 'vitest';
import { normalDraws, seededRandom, xoshiro128 } from '#lib/model/ensemble/random.ts';

test('gives the published outputs of xoshiro128** for the state 1, 2, 3, 4', () => {
	// Reference implementation version 1.1 of the generator's authors, as libraries check it.
	const next = xoshiro128([1, 2, 3, 4]);
	expect(Array.from({ length: 10 }, next)).toEqual([
		11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597,
		4258142804
	]);
});

test('the same seed gives the same numbers, another seed others', () => {
	const from = (seed: number) => Array.from({ length: 50 }, seededRandom(seed));
	expect(from(7)).toEqual(from(7));
	expect(from(7)).not.toEqual(from(8));
	expect(from(0).every((value) => value > 0 && value < 1)).toBe(true);
});

test('numbers fill the unit interval evenly', () => {
	const random = seededRandom(1);
	const counts = Array.from({ length: 20 }, () => 0);
	for (let i = 0; i < 100_000; i++) {
		const bin = Math.floor(random() * 20);
		counts[bin] = (counts[bin] ?? 0) + 1;
	}
	const chi2 = counts.reduce((sum, count) => sum + (count - 5000) ** 2 / 5000, 0);
	// Chi-square with 19 degrees of freedom: 99.9 % lie under 43.8.
	expect(chi2).toBeLessThan(43.8);
});

test('numbers that follow each other are not related', () => {
	const random = seededRandom(2);
	const values = Array.from({ length: 50_000 }, () => random() - 0.5);
	const product = values.slice(1).reduce((sum, value, i) => sum + value * (values[i] ?? 0), 0);
	expect(Math.abs((product / values.length) * 12)).toBeLessThan(0.015);
});

test('neighbouring seeds give unrelated numbers', () => {
	const firsts = Array.from({ length: 20_000 }, (_, seed) => seededRandom(seed)());
	const mean = firsts.reduce((sum, value) => sum + value, 0) / firsts.length;
	expect(mean).toBeCloseTo(0.5, 2);
});

test('normal draws have one in each of their strata', () => {
	const draws = normalDraws(4, seededRandom(3)).toSorted();
	// Quartiles of the normal distribution: -0.6745, 0, 0.6745.
	expect(draws[0]).toBeLessThan(-0.6744);
	expect(draws[1]).toBeGreaterThan(-0.6745);
	expect(draws[1]).toBeLessThan(0);
	expect(draws[2]).toBeGreaterThan(0);
	expect(draws[3]).toBeGreaterThan(0.6744);
});

test('normal draws have mean 0 and spread 1, and come in no order', () => {
	const draws = normalDraws(1000, seededRandom(4));
	const mean = draws.reduce((sum, z) => sum + z, 0) / draws.length;
	const variance = draws.reduce((sum, z) => sum + z * z, 0) / draws.length;
	const lag = draws.slice(1).reduce((sum, z, i) => sum + z * (draws[i] ?? 0), 0) / draws.length;
	expect(Math.abs(mean)).toBeLessThan(0.005);
	expect(variance).toBeCloseTo(1, 1);
	expect(Math.abs(lag)).toBeLessThan(0.1);
});

test('no draws is an empty array, and one draw is finite', () => {
	expect(normalDraws(0, seededRandom(5))).toHaveLength(0);
	expect(Number.isFinite(normalDraws(1, seededRandom(5))[0])).toBe(true);
});
