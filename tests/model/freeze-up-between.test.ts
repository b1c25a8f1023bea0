import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { total_m } from '#lib/model/column.ts';
import { outlook, type OutlookInput } from '#lib/model/outlook.ts';
import { siteSeason } from '#lib/model/site-season.ts';
import { asked, LOADS, reading, record } from '../support/invented-winter.ts';

const FROST = Array.from({ length: 40 }, () => -8);
const [FIRST, MIDDLE, LAST] = ['2026-12-01', '2026-12-06', '2026-12-11'];
const BETWEEN = record({ freezeUpOn: FIRST, freezeUpBy: LAST });

function input(asOf: string, change: Partial<OutlookInput> = {}): OutlookInput {
	const { weather, ...rest } = asked(FROST, { record: BETWEEN, loads: LOADS, asOf, until: asOf });
	return { ...rest, weather: weather.filter(({ on }) => on <= asOf), ...change };
}

function look(asOf: string, change: Partial<OutlookInput> = {}) {
	const answer = outlook(input(asOf, change));
	if (answer === null) throw new Error(`no answer for ${asOf}`);
	const today = answer.forecast.days.find(({ on }) => on === asOf);
	if (!today) throw new Error(`${asOf} is not told`);
	return { ...answer, day: today };
}

test('there is an answer from the first day that the lake may have frozen over, not before', () => {
	expect(outlook(input(addDays(FIRST, -1)))).toBeNull();
	expect(look(FIRST).forecast.days.map(({ on }) => on)).toEqual([FIRST]);
	expect(look('2026-12-04').forecast.days).toHaveLength(4);
});

test('until the middle day open water is shown, with the doubt that some ice may be there', () => {
	for (const asOf of [FIRST, '2026-12-03', MIDDLE]) {
		const { day, today, forecast } = look(asOf);
		expect(day.total_m).toMatchObject({ p05: 0, p10: 0, p50: 0 });
		expect(day.bound).toEqual({ total_m: 0, effective_m: 0 });
		expect(today && total_m(today.column)).toBe(0);
		expect([day.fdd_degCd, day.tdd_degCd]).toEqual([0, 0]);
		for (const load of forecast.loads)
			expect(load.status).toBe(load.required_m === null ? 'askAnEngineer' : 'notYet');
	}
	expect(look(FIRST).day.total_m.p95).toBe(0);
	expect(look(MIDDLE).day.total_m.p95).toBeGreaterThan(0.02);
});

test('at its last day more than half of the cases have ice, and the lower bound none yet', () => {
	const { day } = look(LAST);
	expect(day.total_m.p50).toBeGreaterThan(0.02);
	expect(day.total_m.p10).toBeLessThan(0.02);
});

test('that it may still be open is said until the last day, or until somebody has drilled ice', () => {
	const codes = (asOf: string, change: Partial<OutlookInput> = {}) =>
		look(asOf, change).forecast.cautions.map(({ code }) => code);
	expect(codes('2026-12-04')).toContain('freezeUpNotSure');
	expect(codes('2026-12-10')).toContain('freezeUpNotSure');
	expect(codes(LAST)).not.toContain('freezeUpNotSure');
	expect(codes('2026-12-04', { record: record() })).not.toContain('freezeUpNotSure');
	const drilled = reading('2026-12-04', [0.05]);
	expect(codes('2026-12-05', { readings: [drilled] })).not.toContain('freezeUpNotSure');
	const told = { ...drilled, secondHand: true };
	expect(codes('2026-12-05', { readings: [told] })).toContain('freezeUpNotSure');
});

test('ice drilled before the middle day has grown since, in every case', () => {
	const drilled = reading('2026-12-03', [0.05, 0.05, 0.05]);
	const { day, today } = look('2026-12-08', { readings: [drilled] });
	expect(day.total_m.p10).toBeGreaterThan(0.04);
	expect(day.total_m.p50).toBeGreaterThan(0.06);
	expect(today?.fdd_degCd).toBeCloseTo(5 * 8, 6);
	const season = siteSeason(input('2026-12-08', { readings: [drilled] }));
	const heights = season?.days.map(({ column }) => total_m(column)) ?? [];
	expect(heights.slice(0, 2)).toEqual([0, 0]);
	expect(heights[2]).toBeCloseTo(0.05, 9);
});

test('open water that was measured brings freeze-up no earlier', () => {
	const open = reading('2026-12-03', [0]);
	const { day } = look('2026-12-05', { readings: [open] });
	expect(day.total_m.p50).toBe(0);
});

test('from the middle day on the season is the one that froze over then', () => {
	const asOf = '2027-01-05';
	const between = siteSeason(input(asOf))?.days.slice(5);
	const middle = siteSeason(input(asOf, { record: record({ freezeUpOn: MIDDLE }) }))?.days;
	expect(between).toEqual(middle);
});

test('what comes is told from within the span too, the later the surer', () => {
	const until = '2027-01-05';
	const past = asked(FROST).weather.flatMap((day) =>
		[1, 2, 3].map((back) => ({
			...day,
			on: `${Number(day.on.slice(0, 4)) - back}${day.on.slice(4)}`
		}))
	);
	const sorted = past.toSorted((a, b) => (a.on < b.on ? -1 : 1));
	const { forecast } = look('2026-12-03', { until, past: sorted });
	expect(forecast.days.at(-1)?.on).toBe(until);
	expect(forecast.days.at(-1)?.total_m.p50).toBeGreaterThan(0.1);
	expect(forecast.loads.find(({ id }) => id === 'on-foot')?.expectedFrom).not.toBeNull();
});

test('never is ice shown on more days than were frozen, whatever the span', () => {
	fc.assert(
		fc.property(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 0, max: 19 }), (span, after) => {
			const spanned = record({ freezeUpOn: FIRST, freezeUpBy: addDays(FIRST, span) });
			const asOf = addDays(FIRST, Math.min(after, Math.floor(span / 2)));
			expect(look(asOf, { record: spanned }).day.total_m.p50).toBe(0);
		}),
		{ numRuns: 60 }
	);
});

test('what somebody told of the ice pulls none into cases that are still open', () => {
	const told = { ...reading('2026-12-03', [0.15]), secondHand: true };
	const { day, forecast } = look('2026-12-04', { readings: [told] });
	expect(day.total_m.p50).toBe(0);
	for (const { bound_m } of forecast.loads) expect(bound_m).toBe(0);
});
