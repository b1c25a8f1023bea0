import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { evidenceOf, learn, type PastWinter } from '#lib/model/ensemble/memory.ts';
import { normalDraws, seededRandom } from '#lib/model/ensemble/random.ts';
import { UNCERTAIN } from '#lib/model/ensemble/uncertain.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import {
	band,
	correlation,
	dayAt,
	ensembleInput,
	follow,
	FREEZE_UP,
	mean,
	median
} from '../../support/invented-ensemble.ts';
import { measuredReading } from '../../support/measured-reading.ts';
import { INVENTED_LAKE, seededWinter } from '../../support/seeded-winter.ts';

const READ_ON = [20, 40, 60, 80, 99];
const TRAITS = UNCERTAIN.map(({ name }) => name);
const KEPT = TRAITS.indexOf('snowKeptFraction');
const EXCHANGE = TRAITS.indexOf('exchange_W_m2K');
const NONE = new Float64Array();

/** A cold winter with so much snow, the first of some years. */
function winterWeather(year: number, snow_kg_m2: number): WeatherDay[] {
	const shape = { seed: 100 + year, mean_degC: -12, swing_K: 6, snow_kg_m2 };
	return seededWinter(addDays(FREEZE_UP, 365 * year), 100, shape);
}

/** Members of a site with one trait so far off its prior and the others in its middle. */
function follows(trait: number, off: number, weather: readonly WeatherDay[], seed: number) {
	const siteTraits = TRAITS.map((_, k) => new Float64Array(100).fill(k === trait ? off : 0));
	const freezeUpOn = weather[0]?.on ?? FREEZE_UP;
	return follow(ensembleInput({ weather, freezeUpOn, members: 100, seed, siteTraits }));
}

/** Winters of such a site, each read in single holes of one member. */
function pastWinters(trait: number, off: number, count: number, snow_kg_m2 = 0.3): PastWinter[] {
	return Array.from({ length: count }, (_, year) => {
		const weather = winterWeather(year, snow_kg_m2);
		const days = follows(trait, off, weather, 900 + year);
		const readings = READ_ON.flatMap((index) => {
			const day = days[index];
			return day ? [measuredReading(day.on, day.on, { total_m: day.hole_m[year] ?? 0 })] : [];
		});
		const freezeUpOn = weather[0]?.on ?? FREEZE_UP;
		return { freezeUpOn, freezeUpBy: null, weather, events: [], readings };
	});
}

/** The same winter so many days later. */
function later(past: PastWinter, days: number): PastWinter {
	const moved = <T extends { on: string }>(each: T): T => ({ ...each, on: addDays(each.on, days) });
	return {
		...past,
		freezeUpOn: addDays(past.freezeUpOn, days),
		weather: past.weather.map(moved),
		readings: past.readings.map(moved)
	};
}

function taught(winters: readonly PastWinter[]) {
	const memory = learn(
		winters.flatMap((winter) => evidenceOf(winter, INVENTED_LAKE)),
		winters.length
	);
	if (memory === null) throw new Error('nothing was learned');
	return memory;
}

const spreadOf = (root: readonly (readonly number[])[], k: number) =>
	Math.hypot(...(root[k] ?? []));

test.each([
	['that keeps much or little of its snow', KEPT, 0.3],
	['that exchanges much or little heat with the air', EXCHANGE, 0]
])('a site %s is told from its winters', (_, trait, snow_kg_m2) => {
	const [low, high] = [-2, 2].map((off) => taught(pastWinters(trait, off, 8, snow_kg_m2)));
	expect((high?.mean[trait] ?? NaN) - (low?.mean[trait] ?? NaN)).toBeGreaterThan(0.5);
	// No longer as uncertain as a lake that nobody has read: √(1 + 0.3²) with the widening.
	expect(spreadOf(high?.root ?? [], trait)).toBeLessThan(1);
	// Of each winter those up to its thickest one.
	expect(high?.winters).toBe(8);
	expect(high?.readings).toBeGreaterThan(24);
});

test('what was learned brings the next winter nearer, and no further doubt', () => {
	const weather = winterWeather(20, 0.3);
	const freezeUpOn = weather[0]?.on ?? FREEZE_UP;
	const truth_m = median(follows(KEPT, 2, weather, 77).at(-1)?.site_m ?? NONE);
	const estimate = (memory: ReturnType<typeof taught> | null) =>
		follow(ensembleInput({ weather, freezeUpOn, memory })).at(-1)?.site_m ?? NONE;
	const [learned, fresh] = [estimate(taught(pastWinters(KEPT, 2, 8))), estimate(null)];
	expect(Math.abs(median(learned) - truth_m)).toBeLessThan(0.7 * Math.abs(median(fresh) - truth_m));
	expect(band(learned)).toBeLessThan(band(fresh));
});

test('more winters teach more, and one odd winter does not rule', () => {
	const winters = pastWinters(KEPT, 2, 6);
	const [one, six] = [taught(winters.slice(0, 1)), taught(winters)];
	expect(spreadOf(six.root, KEPT)).toBeLessThan(spreadOf(one.root, KEPT));
	expect(spreadOf(one.root, KEPT)).toBeGreaterThan(0.8);
	expect(Math.abs(one.mean[KEPT] ?? NaN)).toBeLessThan(1.5);
});

test('two winters with as many readings have their own chances', () => {
	const [winter] = pastWinters(EXCHANGE, 0, 1);
	if (!winter) throw new Error('no winter');
	const [first] = evidenceOf(winter, INVENTED_LAKE);
	// The same weather and readings a day later: all that may differ is chance.
	const [second] = evidenceOf(later(winter, 1), INVENTED_LAKE);
	const [again] = evidenceOf(winter, INVENTED_LAKE);
	expect(again?.predicted).toEqual(first?.predicted);
	expect(correlation(first?.predicted ?? NONE, second?.predicted ?? NONE)).toBeLessThan(0.7);
	expect(second?.traits).toEqual(first?.traits);
});

test('the order of winters does not matter', () => {
	const winters = pastWinters(KEPT, 2, 3);
	const [there, back] = [taught(winters), taught(winters.toReversed())];
	there.mean.forEach((value, k) => expect(value).toBeCloseTo(back.mean[k] ?? NaN, 9));
});

test('nothing read teaches nothing, nor does what is no thickness of the site', () => {
	expect(learn([], 3)).toBeNull();
	const [winter] = pastWinters(EXCHANGE, 0, 1);
	if (!winter) throw new Error('no winter');
	const on = dayAt(30);
	const fell = { ...measuredReading('fell', on, { total_m: 0.01 }), kind: 'wentThrough' as const };
	const least = { ...measuredReading('least', on, { total_m: 0.1 }), kind: 'atLeast' as const };
	const snow = measuredReading('snow', on, { snow_m: 0.2 });
	for (const readings of [[], [fell], [least], [snow]])
		expect(evidenceOf({ ...winter, readings }, INVENTED_LAKE)).toEqual([]);
});

test('readings after the thickest one are left to the thaw', () => {
	const [winter] = pastWinters(EXCHANGE, 0, 1);
	if (!winter) throw new Error('no winter');
	const readings = [0.2, 0.4, 0.35, 0.3].map((total_m, i) =>
		measuredReading(`${i}`, dayAt(20 + 10 * i), { total_m })
	);
	const values = evidenceOf({ ...winter, readings }, INVENTED_LAKE).map(({ value }) => value);
	expect(values).toEqual([0.2, 0.4]);
});

test('with one trait and one kind of reading it is the linear regression known from books', () => {
	// Bayes with a normal prior z ~ N(0, 1), y = 2 z + e, e ~ N(0, 1), readings 3 and 5 of y:
	// precision 1 + 2·4 = 9, mean 2·(3 + 5)/9.
	const random = seededRandom(9);
	const z = normalDraws(20_000, random);
	const predicted = z.map((value) => 2 * value);
	const evidence = [3, 5].map((value) => ({ traits: [z], predicted, value, sd: 1 }));
	const memory = learn(evidence, 1);
	expect(memory?.mean[0]).toBeCloseTo(16 / 9, 2);
	// with what is added for odd winters: 1/9 + 0.3²
	expect((memory?.root[0]?.[0] ?? NaN) ** 2).toBeCloseTo(1 / 9 + 0.09, 2);
	expect(mean(z)).toBeCloseTo(0, 3);
});

test('a slip of the pen in a past winter teaches nothing', () => {
	const [winter] = pastWinters(KEPT, 0, 1);
	if (winter === undefined) throw new Error('no winter');
	const slip = measuredReading('slip', addDays(FREEZE_UP, 30), { total_m: 2.5 });
	const told = evidenceOf({ ...winter, readings: [...winter.readings, slip] }, INVENTED_LAKE);
	expect(told.map(({ value }) => value)).toEqual(
		evidenceOf(winter, INVENTED_LAKE).map(({ value }) => value)
	);
	expect(told.length).toBeGreaterThan(2);
});
