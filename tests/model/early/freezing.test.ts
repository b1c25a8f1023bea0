import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { coolingOf } from '#lib/model/early/cooling.ts';
import { freezeChances } from '#lib/model/early/freeze-chance.ts';
import { earlierFreezeUps, freezeThreshold } from '#lib/model/early/freeze-threshold.ts';
import { lag_d, smoothedAir } from '#lib/model/early/smoothed-air.ts';
import { INVENTED_LAKE } from '../../support/seeded-winter.ts';
import { weatherDay } from '../../support/weather-day.ts';

const LAKE = { ...INVENTED_LAKE, meanDepth_m: 6 };

function steady(from: string, count: number, air_degC: number | null) {
	return Array.from({ length: count }, (_, index) =>
		weatherDay(addDays(from, index), { air_degC })
	);
}

test('deep water follows the air more slowly, in proportion to its depth', () => {
	expect(lag_d(LAKE)).toBeCloseTo(14.53, 2);
	expect(lag_d({ meanDepth_m: 12 })).toBeCloseTo(2 * lag_d(LAKE), 9);
	expect(lag_d({ meanDepth_m: null })).toBeCloseTo((5 / 6) * lag_d(LAKE), 9);
});

test('under steady air what is left of the start falls by e in one lag', () => {
	const days = smoothedAir(steady('2026-10-01', 29, -5), LAKE, 10);
	expect(days.at(-1)?.smoothed_degC).toBeCloseTo(-5 + 15 * Math.exp(-29 / lag_d(LAKE)), 9);
});

test('a day without a temperature changes nothing: missing weather makes no ice', () => {
	const cold = steady('2026-10-01', 20, -8);
	const gaps = [...cold, ...steady('2026-10-21', 20, null)];
	expect(smoothedAir(gaps, LAKE).at(-1)?.smoothed_degC).toBe(
		smoothedAir(cold, LAKE).at(-1)?.smoothed_degC
	);
});

test('a record that begins in autumn starts from what summer left, not from the first day', () => {
	const [first] = smoothedAir(steady('2026-10-01', 1, -5), LAKE);
	expect(first?.smoothed_degC).toBeGreaterThan(5);
});

const record = (winter: string, freezeUpOn: string | null, freezeUpBy: string | null = null) => ({
	winter,
	freezeUpOn,
	freezeUpBy,
	iceOutOn: null,
	events: []
});

test('earlier freeze-ups tell where the air stood the day before', () => {
	const weather = steady('2025-10-01', 60, -2);
	const [one] = earlierFreezeUps([record('2025-26', '2025-11-20')], weather, LAKE);
	const upTo = weather.filter(({ on }) => on < '2025-11-20');
	expect(one).toMatchObject({ winter: '2025-26', freezeUpOn: '2025-11-20' });
	expect(one?.smoothed_degC).toBe(smoothedAir(upTo, LAKE).at(-1)?.smoothed_degC);
});

test('a freeze-up that is vague, or without weather before it, teaches nothing', () => {
	const weather = steady('2025-10-01', 60, -2);
	for (const each of [
		record('2025-26', '2025-11-10', '2025-11-25'),
		record('2025-26', null),
		record('2024-25', '2024-11-20'),
		record('2025-26', '2025-10-20'),
		record('2025-26', '2026-01-20')
	])
		expect(earlierFreezeUps([each], weather, LAKE)).toEqual([]);
});

const earlier = (smoothed_degC: number) => ({
	winter: '2025-26',
	freezeUpOn: '2025-11-20',
	smoothed_degC
});

test('without earlier freeze-ups the measured lakes stand in, with all of their spread', () => {
	expect(freezeThreshold([])).toEqual({ mean_degC: 0, sd_K: 2 });
});

test('the lake’s own freeze-ups count the more the more there are', () => {
	// w = 2.56 / (2.56 + 1.44) = 0.64 and 2.56 / (2.56 + 1.44/4) = 0.8767, by hand.
	const one = freezeThreshold([earlier(-2)]);
	expect(one.mean_degC).toBeCloseTo(-1.28, 9);
	expect(one.sd_K).toBeCloseTo(Math.sqrt(2.56 * 0.36 + 1.44), 9);
	const four = freezeThreshold([-2, -2, -2, -2].map(earlier));
	expect(four.mean_degC).toBeCloseTo(-1.7534, 4);
	expect(four.sd_K).toBeLessThan(one.sd_K);
	expect(four.sd_K).toBeGreaterThan(1.2);
});

test('the chance is the normal share of thresholds that the smoothed air has been down to', () => {
	const known = steady('2026-10-01', 60, 3);
	const now = smoothedAir(known, LAKE).at(-1)?.smoothed_degC ?? 0;
	const days = steady('2026-11-30', 40, now - 6);
	const futures = [{ days }];
	const threshold = { mean_degC: now - 3, sd_K: 1 };
	const chances = freezeChances({ lake: LAKE, known, futures, threshold });
	expect(chances).toHaveLength(41);
	expect(chances[0]).toEqual({ on: '2026-11-29', pFrozen: 0 });
	// Half way down after ln 2 of the lag: 10.07 days.
	const half = chances.find(({ on }) => on === addDays('2026-11-29', 10));
	expect(half?.pFrozen).toBeCloseTo(0.5, 1);
	const falls = chances.filter(({ pFrozen }, i) => pFrozen < (chances[i - 1]?.pFrozen ?? 0));
	expect(falls).toEqual([]);
});

test('nothing known gives no chance', () => {
	const threshold = { mean_degC: 0, sd_K: 2 };
	expect(freezeChances({ lake: LAKE, known: [], futures: [], threshold })).toEqual([]);
	expect(coolingOf([], LAKE)).toBeNull();
});

test('cooling counts frost gross, as in the worked example of degree-days', () => {
	// Daily means -5, -8, +2, +4, -10, +20, -3 °C: 26 °C·d of frost, four days of it.
	const air = [-5, -8, 2, 4, -10, 20, -3];
	const weather = air.map((air_degC, index) =>
		weatherDay(addDays('2026-11-01', index), {
			air_degC,
			freezing_degCd: Math.max(0, -air_degC),
			thawing_degCd: Math.max(0, air_degC)
		})
	);
	expect(coolingOf(weather, LAKE)).toMatchObject({
		to: '2026-11-07',
		frost_degCd: 26,
		frostDays: 4,
		firstFrostOn: '2026-11-01',
		week_degC: 0,
		weekBefore_degC: null,
		isDepthAssumed: false
	});
});
