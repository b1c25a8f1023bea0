import { expect, test } from 'vitest';
import { clockDoubt } from '#lib/server/weather/source/checks/clock-doubt.ts';

/** Seeded, so that the figures below are the same on every run. */
function noise(seed: number): () => number {
	let state = seed;
	return () => {
		state = (state * 1_664_525 + 1_013_904_223) % 4_294_967_296;
		return state / 4_294_967_296 - 0.5;
	};
}

/** Weather that comes and goes within a day or two, with a daily swing about the given hour. */
function weather(seed: number, swing_K: number, warmest_h: number) {
	const next = noise(seed);
	let passing_K = 0;
	return Array.from({ length: 10 * 24 }, (_, at) => {
		passing_K = passing_K * 0.97 + 5 * next();
		const turn = ((at + 0.5 - warmest_h) / 24) * 2 * Math.PI;
		const air_degC = -8 + passing_K + swing_K * Math.cos(turn);
		return {
			at_s: Date.UTC(2026, 0, 10) / 1000 + at * 3600,
			air_degC,
			precipitation_kg_m2: null,
			snowfall_kg_m2: null,
			landSnow_m: null,
			wind_m_s: null
		};
	});
}

test('the daily swing tells a clock that is 6 hours off, and polar night tells nothing', () => {
	const seeds = Array.from({ length: 200 }, (_, at) => at + 1);
	const told = (swing_K: number, warmest_h: number) =>
		seeds.filter((seed) => clockDoubt(weather(seed, swing_K, warmest_h), 0) !== null).length;
	expect(told(3, 20.5)).toBeGreaterThan(180);
	expect(told(3, 8.5)).toBeGreaterThan(180);
	expect(told(3, 14.5)).toBe(0);
	expect(told(3, 16.5)).toBe(0);
	expect(told(0, 14.5)).toBeLessThan(6);
});
