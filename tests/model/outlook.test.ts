import fc from 'fast-check';
import { expect, test } from 'vitest';
import { total_m } from '#lib/model/column.ts';
import { outlook, type Outlook, type OutlookInput } from '#lib/model/outlook.ts';
import { siteSeason } from '#lib/model/site-season.ts';
import { since } from '../support/invented-since.ts';
import {
	LOADS,
	asked,
	hole,
	ownLoad,
	reading,
	record,
	weather,
	weatherDay
} from '../support/invented-winter.ts';

const FROST = Array.from({ length: 60 }, () => -10);
/** Ten days of frost, a day of thaw, then frost again. */
const THAWED = [...FROST.slice(0, 30), 4, ...FROST.slice(0, 10)];

function look(air_degC: readonly (number | null)[], change: Partial<OutlookInput> = {}): Outlook {
	const answer = outlook(asked(air_degC, { members: 100, ...change }));
	if (!answer) throw new Error('no outlook');
	return answer;
}

function on(answer: Outlook, day: string) {
	const found = answer.forecast.days.find((each) => each.on === day);
	if (!found) throw new Error(`no ${day}`);
	return found;
}

const statuses = (answer: Outlook) =>
	Object.fromEntries(answer.forecast.loads.map((each) => [each.id, each.status]));

test('there is no answer without a freeze-up, nor before it', () => {
	expect(outlook(asked(FROST, { record: record({ freezeUpOn: null }) }))).toBeNull();
	expect(outlook(asked(FROST, { asOf: '2026-11-30' }))).toBeNull();
});

test('each day has its quantiles, in their order', () => {
	const day = on(look(FROST), '2027-01-15');
	const layers = [day.total_m, day.effective_m, day.clear_m, day.white_m, day.snow_m, day.slush_m];
	for (const { p05, p10, p50, p90, p95 } of layers) {
		const told = [p05, p10, p50, p90, p95].map((each) => each ?? NaN);
		expect(told).toEqual(told.toSorted((a, b) => a - b));
	}
	expect(day.total_m.p50).toBeGreaterThan(0.2);
	expect(day.total_m.p05).toBeLessThan(day.total_m.p95 ?? 0);
});

test('days past the weather are gaps without any number', () => {
	const answer = look(FROST, { until: '2027-02-10' });
	expect(on(answer, '2027-02-10')).toMatchObject({
		source: 'gap',
		air_degC: null,
		fdd_degCd: null,
		total_m: { p10: null, p50: null }
	});
	expect(answer.forecast.days.at(0)?.on).toBe('2026-12-01');
	expect(answer.forecast.days.at(-1)?.on).toBe('2027-02-10');
});

test('weather and readings of later days change nothing', () => {
	const early = look(FROST.slice(0, 30));
	const asOf = early.forecast.asOf;
	const late = look(FROST, { asOf, until: asOf, readings: [reading('2027-01-20', [0.9])] });
	expect(late.forecast.days).toEqual(early.forecast.days);
	expect(late.anchors).toEqual([]);
});

test('a day far past the weather has no state, and no load stands', () => {
	const answer = look(FROST, { asOf: '2027-03-01', until: '2027-03-01' });
	expect(answer.today).toBeNull();
	expect(answer.growth_m_d).toBeNull();
	expect(new Set(Object.values(statuses(answer)))).toEqual(new Set(['notYet', 'askAnEngineer']));
});

test('five holes that show it make people on foot reached, without them it is expected', () => {
	const holes = [0.4, 0.42, 0.41, 0.4, 0.43];
	expect(statuses(look(FROST))['on-foot']).toBe('expectedNotDrilled');
	const drilled = look(FROST, { readings: [reading('2027-01-27', holes)] });
	expect(statuses(drilled)['on-foot']).toBe('reached');
	expect(drilled.anchors).toHaveLength(1);
	expect(drilled.anchors[0]?.after_m).toBeGreaterThan(0.37);
	expect(drilled.anchors[0]?.after_m).toBeLessThan(0.46);
});

test('a day of thaw withholds everything until frost and a hole have ended it', () => {
	const thawed = look(THAWED);
	expect(thawed.warmSpell).toMatchObject({ state: 'withheld', since: '2026-12-31' });
	expect(statuses(thawed)['on-foot']).toBe('withheld');
	const holes = reading('2027-01-08', [0.5, 0.5, 0.5]);
	expect(look(THAWED, { readings: [holes] }).warmSpell.state).toBe('none');
	expect(statuses(look(THAWED, { readings: [holes] }))['on-foot']).toBe('reached');
});

test('the strict set decides unless the other is chosen, and the other stands beside it', () => {
	const strict = look(FROST).forecast.loads.find((each) => each.id === 'car');
	const common = look(FROST, { chartSet: 'common' }).forecast.loads.find(
		(each) => each.id === 'car'
	);
	expect(strict).toMatchObject({ required_m: 0.4, requiredOther_m: 0.3 });
	expect(common).toMatchObject({ required_m: 0.3, requiredOther_m: 0.4 });
});

test('a load has its dates and, for each day, how likely its thickness is', () => {
	const [foot] = look(FROST).forecast.loads;
	expect(foot?.days[0]).toEqual({ on: '2026-12-01', pThickness: 0, pThaw: 0 });
	expect(foot?.days.at(-1)).toEqual({ on: '2027-01-29', pThickness: 1, pThaw: 0 });
	expect((foot?.expectedFrom ?? '') < (foot?.likelyFrom ?? '')).toBe(true);
	const rising = foot?.days.find((day) => day.on === foot.expectedFrom)?.pThickness;
	expect(rising).toBeGreaterThanOrEqual(0.5);
	expect(rising).toBeLessThan(0.9);
	expect(foot?.until).toBeNull();
});

test('a heavier requirement is never more likely met, and what an engineer decides has no chance', () => {
	const { loads } = look(FROST).forecast;
	const chances = (id: string) =>
		loads.find((each) => each.id === id)?.days.map((day) => day.pThickness) ?? [];
	const foot = chances('on-foot');
	chances('car').forEach((car, index) => expect(car).toBeLessThanOrEqual(foot[index] ?? NaN));
	expect(new Set(chances('truck-with-shelter'))).toEqual(new Set([null]));
});

test('a thaw withholds the status and leaves the dates', () => {
	const foot = look(THAWED).forecast.loads[0];
	expect(foot).toMatchObject({ status: 'withheld' });
	expect(foot?.expectedFrom).not.toBeNull();
	expect(foot?.days.at(-1)).toMatchObject({ pThickness: 1, pThaw: 1 });
});

/** Three earlier winters of frost from December to March and warmth after. */
const PAST = ['2023', '2024', '2025'].flatMap((year) =>
	weather(
		`${year}-10-01`,
		Array.from({ length: 270 }, (_, day) => 4 - 16 * Math.sin((Math.PI * (day - 30)) / 190))
	)
);

test('with earlier winters at hand the days to come are told, to the ice-out', () => {
	const { forecast } = look(FROST, { until: '2027-06-20', past: PAST });
	const april = forecast.days.find((day) => day.on === '2027-04-10');
	expect(april?.source).toBe('climate');
	expect(april?.fdd_degCd).toBeGreaterThan(600);
	expect(april?.total_m.p95).toBeGreaterThan(april?.total_m.p05 ?? Infinity);
	expect(forecast.days.at(-1)?.total_m.p90).toBe(0);
	const foot = forecast.loads[0];
	const { p10, p50, p90 } = forecast.iceOut ?? {};
	expect([foot?.until, p50, p90].toSorted()).toEqual([foot?.until, p50, p90]);
	expect([p10, p50, p90].toSorted()).toEqual([p10, p50, p90]);
	expect(foot?.days.at(-1)).toMatchObject({ pThickness: 0 });
	const ahead = foot?.days.filter((day) => day.on > '2027-04-20').map((day) => day.pThaw ?? 0);
	expect(Math.max(...(ahead ?? []))).toBeGreaterThan(0.9);
});

test('the days that are known are the same whether those to come are told or not', () => {
	const near = look(FROST).forecast;
	const far = look(FROST, { until: '2027-03-20', past: PAST }).forecast;
	expect(far.days.slice(0, near.days.length)).toEqual(near.days);
	expect(far.loads.map((each) => each.status)).toEqual(near.loads.map((each) => each.status));
});

test('the same question has the same answer', () => {
	const question = { until: '2027-03-20', past: PAST };
	expect(look(FROST, question)).toEqual(look(FROST, question));
});

test('one hole, however thick, does not raise the bound that statuses go by', () => {
	const plain = look(FROST).forecast.loads[0]?.bound_m ?? NaN;
	const bound = (...readings: OutlookInput['readings']) =>
		look(FROST, { readings }).forecast.loads[0]?.bound_m ?? NaN;
	const one = reading('2027-01-20', [0.75]);
	const other = reading('2027-01-24', [0.75]);
	expect(bound(one)).toBeLessThanOrEqual(plain + 0.01);
	expect(bound(one, other)).toBeGreaterThan(plain + 0.01);
	expect(bound(reading('2027-01-20', [0.25]))).toBeLessThan(plain - 0.02);
});

test('a tool that stuck in less ice than was expected anyway confirms no thick hole', () => {
	const bound = (...readings: OutlookInput['readings']) =>
		look(FROST, { readings }).forecast.loads[0]?.bound_m ?? NaN;
	const one = reading('2027-01-20', [0.75]);
	const stuck = reading('2027-01-24', [0.05], { kind: 'atLeast' });
	expect(bound(one, stuck)).toBe(bound(one));
});

test('holes drilled before a site opened again make nothing reached on its new ice', () => {
	const air_degC = [...FROST.slice(0, 40), ...Array.from({ length: 10 }, () => -30)];
	const drilledOn = '2027-01-12';
	const five = reading(drilledOn, [0.5, 0.5, 0.5, 0.5, 0.5]);
	const opened = { kind: 'reopened', on: '2027-01-13', refrozeOn: '2027-01-14' } as const;
	const status = (change: Partial<OutlookInput>) =>
		statuses(look(air_degC, { chartSet: 'common', readings: [five], ...change }))['on-foot'];
	expect(status({})).toBe('reached');
	expect(status({ record: record({ events: [opened] }) })).toBe('expectedNotDrilled');
});

test('a slip of the pen is named and does not wreck the winter', () => {
	const slip = look(FROST, { readings: [reading('2027-01-20', [4.1])] });
	const doubts = slip.forecast.cautions.filter((each) => each.code === 'doubtfulReading');
	expect(doubts).toHaveLength(1);
	expect(doubts[0]?.text).toContain('far from what was expected: check it');
	const plain = on(look(FROST), '2027-01-29').total_m.p50 ?? NaN;
	expect(on(slip, '2027-01-29').total_m.p50).toBeLessThan(1.3 * plain);
	expect(statuses(slip)['on-foot']).not.toBe('reached');
});

test('unknown snow widens the band', () => {
	const bare = weather('2026-12-01', FROST);
	const unknown = bare.map((day) => ({
		...day,
		precipitation_kg_m2: null,
		snowfall_kg_m2: null
	}));
	const width = (days: OutlookInput['weather']) => {
		const { p05, p50, p95 } = on(look(FROST, { weather: days }), '2027-01-15').total_m;
		return ((p95 ?? NaN) - (p05 ?? NaN)) / (p50 ?? NaN);
	};
	expect(width(unknown)).toBeGreaterThan(width(bare));
});

test('a freeze-up between two days widens the bound about the middle day', () => {
	const span = { record: record({ freezeUpOn: '2026-12-01', freezeUpBy: '2026-12-11' }) };
	const middle = { record: record({ freezeUpOn: '2026-12-06' }) };
	const wide = on(look(FROST, span), '2026-12-20');
	const narrow = on(look(FROST, middle), '2026-12-20');
	expect(Math.abs((wide.total_m.p50 ?? 0) - (narrow.total_m.p50 ?? 0))).toBeLessThan(0.015);
	expect(wide.total_m.p10).toBeLessThan(narrow.total_m.p10 ?? 0);
});

test('from a recorded ice-out on there is no ice', () => {
	const out = look(FROST, { record: record({ iceOutOn: '2027-01-20' }) });
	expect(on(out, '2027-01-25').total_m).toMatchObject({ p10: 0, p50: 0 });
	expect(on(out, '2027-01-19').total_m.p50).toBeGreaterThan(0.2);
	expect(statuses(out)['on-foot']).toBe('withheld');
});

test('growth of the day leaves out what a reading moved', () => {
	const plain = look(FROST);
	const moved = look(FROST, { readings: [reading('2027-01-29', [0.1])] });
	const shown_m = moved.today ? total_m(moved.today.column) : NaN;
	expect(shown_m).toBeGreaterThan(0.1);
	expect(shown_m).toBeLessThan(0.8 * (plain.today ? total_m(plain.today.column) : NaN));
	for (const { bound_m } of moved.forecast.loads) expect(bound_m).toBeLessThanOrEqual(0.1 + 1e-9);
	expect(on(moved, '2027-01-29').total_m.p50).toBeCloseTo(shown_m, 9);
	expect(moved.growth_m_d).toBeCloseTo(plain.growth_m_d ?? NaN, 9);
});

test('a river asks 15 % more of everything', () => {
	const lake = { ...asked(FROST).lake, water: 'river' as const };
	const car = look(FROST, { lake }).forecast.loads.find((each) => each.id === 'car');
	expect(car?.required_m).toBeCloseTo(0.46, 9);
});

test('texts never call ice safe, and name no empty number', () => {
	const answer = look(THAWED, {
		readings: [reading('2026-12-20', [0.3])],
		since: since('2027-03-01', { isWeatherOld: true })
	});
	const texts = [
		...answer.forecast.cautions.map((each) => each.text),
		...answer.forecast.loads.flatMap((each) => [
			each.reason,
			...each.rules.map((rule) => rule.text)
		])
	].join('\n');
	expect(texts).not.toMatch(/\bsafe|NaN|null|undefined|Infinity/i);
});

const airs = fc.array(fc.integer({ min: -25, max: 4 }), { minLength: 12, maxLength: 50 });

test('temperature alone never makes a load expected or reached, readings of thickness or not', () => {
	fc.assert(
		fc.property(airs, fc.boolean(), (air_degC, isRead) => {
			const days = weather('2026-12-01', air_degC).map((day) => ({
				...day,
				precipitation_kg_m2: null,
				snowfall_kg_m2: null
			}));
			const last = days.at(-1)?.on ?? '';
			const holes = Array.from({ length: 5 }, () =>
				hole({ total_m: 1.5, clear_m: 1.5, white_m: 0 })
			);
			const readings = isRead ? [reading(last, [], { holes })] : [];
			const seen = Object.values(statuses(look(air_degC, { weather: days, readings })));
			expect(seen).not.toContain('reached');
			expect(seen).not.toContain('expectedNotDrilled');
		}),
		{ numRuns: 60 }
	);
});

test('past the last weather the snow is as known as it was until then', () => {
	const late = { asOf: '2027-02-10', until: '2027-02-10' };
	const answer = look(FROST, late);
	expect(answer.today).toBeNull();
	expect(answer.snowKnown).toBe(true);
	const unreported = asked(FROST).weather.map((day) => ({
		...day,
		precipitation_kg_m2: null,
		snowfall_kg_m2: null
	}));
	const unknown = look(FROST, { ...late, weather: unreported });
	expect(unknown.snowKnown).toBe(false);
	expect(unknown.forecast.loads.map(({ expectedFrom }) => expectedFrom)).not.toContainEqual(
		expect.any(String)
	);
});

test('it says what days to come go by', () => {
	const ahead = { until: '2027-03-10' };
	expect(look(FROST).climate).toBeNull();
	expect(look(FROST, { ...ahead, past: [] }).climate).toEqual({
		pastWinters: 0,
		hasUsual: true,
		endsEarly: false
	});
	const winters = (years: readonly number[]) =>
		years.flatMap((year) =>
			weather(
				`${year}-10-01`,
				Array.from({ length: 200 }, () => -6)
			)
		);
	const one = look(FROST, { ...ahead, past: winters([2024]) });
	expect(one.climate).toEqual({ pastWinters: 1, hasUsual: true, endsEarly: false });
	const four = look(FROST, { ...ahead, past: winters([2021, 2022, 2023, 2024]) });
	expect(four.climate).toEqual({ pastWinters: 4, hasUsual: false, endsEarly: false });
});

test('no load is reached without a reading', () => {
	fc.assert(
		fc.property(airs, (air_degC) => {
			expect(Object.values(statuses(look(air_degC)))).not.toContain('reached');
		}),
		{ numRuns: 60 }
	);
});

const frosts = fc.array(fc.integer({ min: -25, max: -4 }), { minLength: 12, maxLength: 50 });
const thaws = fc
	.tuple(fc.array(fc.integer({ min: 2, max: 5 }), { minLength: 6, maxLength: 15 }))
	.map(([each]) => [...FROST, ...each]);

test.each([
	['frost', frosts],
	['thaw', thaws]
])('days of %s without a temperature never raise the lower bound', (_, airs_degC) => {
	fc.assert(
		fc.property(airs_degC, fc.nat(9), fc.integer({ min: 1, max: 5 }), (air_degC, back, length) => {
			const start = Math.max(1, air_degC.length - 2 - back);
			const holed = air_degC.map((each, i) => (i >= start && i < start + length ? null : each));
			const bounds = (each: readonly (number | null)[]) =>
				look(each).forecast.loads.map((load) => load.bound_m ?? NaN);
			const whole = bounds(air_degC);
			bounds(holed).forEach((gapped_m, index) =>
				expect(gapped_m).toBeLessThanOrEqual(whole[index] ?? NaN)
			);
		}),
		{ numRuns: 100 }
	);
});

/** How far 100 members, each with 1 cm a day that a gap may have done, miss the median of all. */
const SAMPLING_m_d = 0.006;

test('days without a temperature never make ice', () => {
	fc.assert(
		fc.property(airs, fc.nat(49), (air_degC, from) => {
			const start = from % air_degC.length;
			const holed = air_degC.map((each, i) => (i >= start ? null : each));
			const heights = (each: readonly (number | null)[]) =>
				siteSeason(asked(each))?.days.map((day) => total_m(day.column)) ?? [];
			const known_m = heights(air_degC.slice(0, start + 1)).at(-1) ?? NaN;
			expect(heights(holed).at(-1)).toBeLessThanOrEqual(known_m + 1e-9);
			const until = look(air_degC.slice(0, start + 1)).forecast.days.at(-1);
			const gapped = look(holed).forecast.days.at(-1);
			const gaps_d = air_degC.length - start;
			const most_m = (until?.total_m.p50 ?? NaN) + SAMPLING_m_d * gaps_d;
			expect(gapped?.total_m.p50).toBeLessThanOrEqual(most_m);
		}),
		{ numRuns: 60 }
	);
});

/** Without a fall of 20 °C, which a warmer day would undo. */
const mild = fc.array(fc.integer({ min: -10, max: 4 }), { minLength: 12, maxLength: 50 });

test('a warmer last day never lowers what is asked for nor lifts a status', () => {
	const rank = { withheld: 0, notYet: 1, askAnEngineer: 1, expectedNotDrilled: 2, reached: 3 };
	fc.assert(
		fc.property(mild, fc.integer({ min: 1, max: 12 }), (air_degC, warmer_K) => {
			const last = air_degC.at(-1) ?? 0;
			const before = look(air_degC).forecast.loads;
			const after = look([...air_degC.slice(0, -1), last + warmer_K]).forecast.loads;
			before.forEach((each, index) => {
				const other = after[index];
				expect(other?.required_m ?? Infinity).toBeGreaterThanOrEqual(each.required_m ?? 0);
				expect(rank[other?.status ?? 'reached']).toBeLessThanOrEqual(rank[each.status]);
			});
		}),
		{ numRuns: 60 }
	);
});

test('the answer holds for every standard load on odd days', () => {
	const odd = [weatherDay('2026-12-01', null), weatherDay('2026-12-02', -40)];
	const answer = outlook(asked([], { weather: odd, asOf: '2026-12-02', until: '2026-12-05' }));
	expect(answer?.forecast.loads).toHaveLength(LOADS.length);
	expect(outlook(asked([]))?.forecast.days.map((day) => day.on)).toEqual(['2026-12-01']);
});

test('three holes far thinner than expected hold the lower bound down on the same day', () => {
	const before = on(look(FROST), '2027-01-20');
	const after = on(
		look(FROST, { readings: [reading('2027-01-20', [0.05, 0.05, 0.06])] }),
		'2027-01-20'
	);
	expect(before.bound?.effective_m).toBeGreaterThan(0.25);
	expect(after.bound?.total_m).toBeLessThanOrEqual(0.05);
	expect(after.bound?.effective_m).toBeLessThanOrEqual(0.05);
	expect(after.total_m.p50).toBeLessThan(0.5 * (before.total_m.p50 ?? 0));
});

test('one hole thicker than expected raises no lower bound that is shown', () => {
	const before = on(look(FROST), '2027-01-20');
	const read = [reading('2027-01-20', [1.3 * (before.total_m.p50 ?? 0)])];
	const after = on(look(FROST, { readings: read }), '2027-01-20');
	expect(after.total_m.p50).toBeGreaterThan(before.total_m.p50 ?? 1);
	expect(after.bound?.total_m).toBeLessThanOrEqual((before.bound?.total_m ?? 0) + 1e-9);
	expect(after.bound?.effective_m).toBeLessThanOrEqual((before.bound?.effective_m ?? 0) + 1e-9);
});

test('one hole brings nothing back of what days without a temperature took from the bound', () => {
	const gappy = [...FROST.slice(0, 40), null, null, null, ...FROST.slice(0, 10)];
	const bound = (...holes_m: number[]) =>
		on(
			look(gappy, {
				asOf: '2027-01-22',
				readings: holes_m.length > 0 ? [reading('2027-01-20', holes_m)] : []
			}),
			'2027-01-22'
		).bound?.total_m ?? NaN;
	const asExpected_m = on(look(gappy), '2027-01-20').total_m.p50 ?? NaN;
	const none_m = bound();
	expect(bound(asExpected_m)).toBeLessThanOrEqual(none_m + 0.003);
	expect(bound(2 * asExpected_m)).toBeLessThanOrEqual(none_m + 0.003);
	const five = Array.from({ length: 5 }, () => asExpected_m);
	expect(bound(...five)).toBeGreaterThan(none_m + 0.02);
});

test('the lower bound is never above the tenth percentile, and gaps come off it', () => {
	const gappy = look([...FROST.slice(0, 40), null, null, ...FROST.slice(0, 10)]);
	for (const { bound, total_m, effective_m } of gappy.forecast.days) {
		expect(bound?.total_m).toBeLessThanOrEqual(total_m.p10 ?? NaN);
		expect(bound?.effective_m).toBeLessThanOrEqual(effective_m.p10 ?? NaN);
	}
	const last = gappy.forecast.days.at(-1);
	expect(last?.bound?.total_m).toBeLessThan((last?.total_m.p10 ?? NaN) - 0.019);
});

test('days before the one asked for that were only forecast widen the band, and are told as such', () => {
	const asOf = '2027-01-29';
	const observed = weather('2026-12-01', FROST);
	const halfForecast = observed.map((day) =>
		day.on >= '2027-01-20' ? { ...day, source: 'forecast' as const } : day
	);
	const readings = [reading('2027-01-20', [0.3, 0.3, 0.31, 0.31])];
	const common = { asOf, until: asOf, past: observed, readings };
	const known = look(FROST, common);
	const guessed = look(FROST, { ...common, weather: halfForecast });
	const width = (answer: Outlook) => {
		const { p05, p95 } = on(answer, asOf).total_m;
		return (p95 ?? NaN) - (p05 ?? NaN);
	};
	expect(on(guessed, '2027-01-25').source).toBe('forecast');
	expect(width(guessed)).toBeGreaterThan(1.03 * width(known));
	expect(on(guessed, asOf).total_m.p50).toBeCloseTo(on(known, asOf).total_m.p50 ?? NaN, 1);
});

test('warm hours of a day that lacks the others double what is asked for, as on a whole day', () => {
	const input = asked(Array.from({ length: 45 }, () => -10));
	const lastOn = input.asOf;
	const weather = input.weather.map((day) =>
		day.on === lastOn ? { ...day, air_degC: null, aboveFreezing_h: 9 } : day
	);
	const rules = (changed: typeof input) =>
		outlook(changed)?.forecast.loads[0]?.rules.map(({ code }) => code) ?? [];
	expect(rules(input)).not.toContain('warmSpell');
	expect(rules({ ...input, weather })).toContain('warmSpell');
});

test('a heavy snowfall ahead ends the days of what stands, and is named as what does', () => {
	const shelter = { ...ownLoad(600), id: 'shelter', parked_h: 48 };
	const snowAhead = (snow_kg_m2: number) =>
		look(FROST, {
			asOf: '2027-01-10',
			until: '2027-01-28',
			loads: [shelter, ...LOADS],
			weather: asked(FROST).weather.map((day) => ({
				...day,
				...(day.on > '2027-01-10' ? { source: 'forecast' as const } : {}),
				...(day.on === '2027-01-13'
					? { precipitation_kg_m2: snow_kg_m2, snowfall_kg_m2: snow_kg_m2 }
					: {})
			}))
		}).forecast.loads;
	const [sunk, ...moving] = snowAhead(45);
	expect(sunk).toMatchObject({ id: 'shelter', until: '2027-01-13', isEndedBySnow: true });
	expect(moving.filter(({ isEndedBySnow }) => isEndedBySnow).map(({ id }) => id)).toEqual([]);
	expect(snowAhead(0)[0]).toMatchObject({ until: null, isEndedBySnow: false });
});
