import fc from 'fast-check';
import { expect, test } from 'vitest';
import { total_m } from '#lib/model/column.ts';
import { outlook, type Outlook, type OutlookInput } from '#lib/model/outlook.ts';
import {
	LOADS,
	asked,
	hole,
	reading,
	record,
	weather,
	weatherDay
} from '../support/invented-winter.ts';

const FROST = Array.from({ length: 60 }, () => -10);
/** Ten days of frost, a day of thaw, then frost again. */
const THAWED = [...FROST.slice(0, 30), 4, ...FROST.slice(0, 10)];

function look(air_degC: readonly (number | null)[], change: Partial<OutlookInput> = {}): Outlook {
	const answer = outlook(asked(air_degC, change));
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

test('each day has its estimate and lower bound, and no other quantile yet', () => {
	const day = on(look(FROST), '2027-01-15');
	for (const layer of [day.total_m, day.effective_m, day.clear_m, day.white_m]) {
		expect(layer.p50).toBeGreaterThanOrEqual(layer.p10 ?? Infinity);
		expect([layer.p05, layer.p90, layer.p95]).toEqual([null, null, null]);
	}
	expect(day.total_m.p50).toBeGreaterThan(0.2);
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
	expect(drilled.anchors[0]?.after_m).toBeCloseTo(0.412, 3);
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

test('dates and probabilities are not made up before they are estimated', () => {
	const [first] = look(FROST).forecast.loads;
	expect(first).toMatchObject({ expectedFrom: null, likelyFrom: null, until: null });
	expect(first?.days.at(-1)).toEqual({ on: '2027-01-29', pThickness: null, pThaw: null });
});

test('a freeze-up between two days widens the bound about the middle day', () => {
	const span = { record: record({ freezeUpOn: '2026-12-01', freezeUpBy: '2026-12-11' }) };
	const middle = { record: record({ freezeUpOn: '2026-12-06' }) };
	const wide = on(look(FROST, span), '2026-12-20');
	const narrow = on(look(FROST, middle), '2026-12-20');
	expect(wide.total_m.p50).toBe(narrow.total_m.p50);
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
	expect(moved.today && total_m(moved.today.column)).toBeCloseTo(0.1, 6);
	expect(moved.growth_m_d).toBeCloseTo(plain.growth_m_d ?? NaN, 9);
});

test('a river asks 15 % more of everything', () => {
	const lake = { ...asked(FROST).lake, water: 'river' as const };
	const car = look(FROST, { lake }).forecast.loads.find((each) => each.id === 'car');
	expect(car?.required_m).toBeCloseTo(0.46, 9);
});

test('texts never call ice safe, and name no empty number', () => {
	const answer = look(THAWED, { readings: [reading('2026-12-20', [0.3])], now: '2027-03-01' });
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
			const whole = look(air_degC).forecast.days.at(-1);
			const gapped = look(holed).forecast.days.at(-1);
			expect(gapped?.total_m.p10).toBeLessThanOrEqual((whole?.total_m.p10 ?? 0) + 1e-9);
			expect(gapped?.effective_m.p10).toBeLessThanOrEqual((whole?.effective_m.p10 ?? 0) + 1e-9);
		}),
		{ numRuns: 100 }
	);
});

test('days without a temperature never make ice', () => {
	fc.assert(
		fc.property(airs, fc.nat(49), (air_degC, from) => {
			const start = from % air_degC.length;
			const holed = air_degC.map((each, i) => (i >= start ? null : each));
			const until = look(air_degC.slice(0, start + 1)).forecast.days.at(-1);
			const gapped = look(holed).forecast.days.at(-1);
			expect(gapped?.total_m.p50).toBeLessThanOrEqual((until?.total_m.p50 ?? 0) + 1e-9);
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
