import { expect, test } from 'vitest';
import type { WeatherDay } from '#lib/model/weather.ts';
import {
	coldWinter,
	dayAt,
	ensembleInput,
	follow,
	mean,
	median,
	quantile,
	type KeptDay
} from '../support/invented-ensemble.ts';
import { measuredReading } from '../support/measured-reading.ts';
import { seededWinter } from '../support/seeded-winter.ts';

/**
 * Truths drawn from the ensemble's own prior, which it must then tell as well as it says: the rank of
 * each among the members is as likely to be any as any other.
 */

const BINS = 10;
/** Exceeded once in a thousand by chance: χ² of nine degrees of freedom (tables). */
const CHI_SQUARE_BOUND = 27.88;

function chiSquare(counts: readonly number[]): number {
	const expected = counts.reduce((sum, count) => sum + count, 0) / counts.length;
	return counts.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

function rankCounts(truths: ArrayLike<number>, members: Float64Array): number[] {
	const sorted = members.toSorted();
	const counts = Array<number>(BINS).fill(0);
	for (let i = 0; i < truths.length; i++) {
		const truth = truths[i] ?? NaN;
		const below = sorted.filter((value) => value < truth).length;
		const same = sorted.filter((value) => value === truth).length;
		// Open water is the same for all who have it: ranks are shared out evenly among them.
		const rank = below + Math.floor(((i * GOLDEN) % 1) * (same + 1));
		const bin = Math.min(BINS - 1, Math.floor((rank * BINS) / (members.length + 1)));
		counts[bin] = (counts[bin] ?? 0) + 1;
	}
	return counts;
}

const thaw = (from: number, days: number, seed: number): WeatherDay[] => [
	...coldWinter(from, seed),
	...seededWinter(dayAt(from), days, { seed, mean_degC: 3, swing_K: 4, snow_kg_m2: 0 })
];

test.each([
	['in frost', coldWinter(70, 31), 70],
	['over young ice', coldWinter(10, 32), 10],
	['in a thaw', thaw(50, 12, 33), 62]
])('ranks of truths drawn from the prior are flat %s', (_, weather, day) => {
	const until = dayAt(day);
	const input = ensembleInput({ weather, until });
	const at = (days: KeptDay[]) => days[day]?.hole_m ?? new Float64Array();
	const members = at(follow({ ...input, members: 1200, seed: 1 }));
	// Free draws, not strata of one: five small ensembles of other seeds.
	const truths = [2, 3, 4, 5, 6].flatMap((seed) => [
		...at(follow({ ...input, members: 80, seed }))
	]);
	const counts = rankCounts(truths, members);
	expect(chiSquare(counts), counts.join(' ')).toBeLessThan(CHI_SQUARE_BOUND);
});

test('ranks tell an ensemble that is too sure, and one that is off', () => {
	const weather = coldWinter(70, 31);
	const [members, truths] = [1, 2].map(
		(seed) =>
			follow(ensembleInput({ weather, members: 400, seed })).at(-1)?.hole_m ?? new Float64Array()
	);
	if (!members || !truths) throw new Error('no ensemble');
	const middle = median(members);
	const narrow = members.map((value) => middle + 0.6 * (value - middle));
	expect(chiSquare(rankCounts(truths, narrow))).toBeGreaterThan(CHI_SQUARE_BOUND);
	const thick = members.map((value) => value * 1.15);
	expect(chiSquare(rankCounts(truths, thick))).toBeGreaterThan(CHI_SQUARE_BOUND);
});

test('after readings the band still holds what it says, is narrower, and the median is nearer', () => {
	const TRUTHS = 40;
	const weather = coldWinter(60, 41);
	const truth = follow(ensembleInput({ weather, members: TRUTHS, seed: 50 }));
	const prior = follow(ensembleInput({ weather, members: 400, seed: 51 })).at(-1)?.hole_m;
	if (!prior) throw new Error('no ensemble');
	const told = Array.from({ length: TRUTHS }, (_, i) => {
		// Each reading from a hole of its own: another member's spot on this member's site.
		const readings = [20, 35, 50].map((day, k) => {
			const site_m = truth[day]?.site_m ?? [];
			const spot = (i + 7 * (k + 1)) % TRUTHS;
			const share = (truth[day]?.hole_m[spot] ?? 0) / (site_m[spot] ?? 1);
			return measuredReading(`${day}`, dayAt(day), { total_m: share * (site_m[i] ?? 0) });
		});
		const input = ensembleInput({ weather, members: 100, seed: 60 + i, readings });
		const said = follow(input).at(-1)?.hole_m ?? new Float64Array();
		const is_m = truth.at(-1)?.hole_m[i] ?? NaN;
		return {
			isInside: is_m >= quantile(said, 0.05) && is_m <= quantile(said, 0.95) ? 1 : 0,
			width_m: quantile(said, 0.95) - quantile(said, 0.05),
			error_m: median(said) - is_m,
			priorError_m: median(prior) - is_m
		};
	});
	// 90 % of 40 within three standard deviations of chance.
	expect(mean(told.map(({ isInside }) => isInside))).toBeGreaterThan(0.9 - 3 * 0.047);
	const priorWidth_m = quantile(prior, 0.95) - quantile(prior, 0.05);
	expect(mean(told.map(({ width_m }) => width_m))).toBeLessThan(0.9 * priorWidth_m);
	const square = (of: (each: (typeof told)[number]) => number) =>
		mean(told.map(of).map((e) => e * e));
	expect(square((each) => each.error_m)).toBeLessThan(0.8 * square((each) => each.priorError_m));
	expect(Math.abs(mean(told.map(({ error_m }) => error_m)))).toBeLessThan(0.02);
});
