import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { outlook, type Outlook, type OutlookInput } from '#lib/model/outlook.ts';
import type { LoadStatus } from '#lib/model/forecast.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { Since } from '#lib/model/since/since.ts';
import { partDay, since } from '../../support/invented-since.ts';
import { asked, hole, reading, weather } from '../../support/invented-winter.ts';

const FROST = Array.from({ length: 60 }, () => -10);
/** The last day of FROST is the day of asking, the next is today. */
const [AS_OF, TODAY] = ['2027-01-29', '2027-01-30'];
const HOLES = reading('2027-01-28', [0.5, 0.52, 0.51, 0.5, 0.53]);

function look(seen: Partial<Since> | null, change: Partial<OutlookInput> = {}): Outlook {
	const answer = outlook(
		asked(FROST, {
			members: 40,
			readings: [HOLES],
			...change,
			since: seen === null ? null : since(TODAY, seen)
		})
	);
	if (!answer) throw new Error('no outlook');
	return answer;
}

function onFoot(answer: Outlook) {
	const found = answer.forecast.loads.find(({ id }) => id === 'on-foot');
	if (!found) throw new Error('no load on foot');
	return found;
}

const codes = (answer: Outlook) => answer.forecast.cautions.map(({ code }) => code);
let calm: Outlook;

beforeAll(() => {
	calm = look({});
});

test('where nothing has been seen since, a load is reached as on the day of asking', () => {
	expect(onFoot(calm).status).toBe('reached');
	expect(calm.forecast.loads).toEqual(look(null).forecast.loads);
});

test('six warm hours of today double what is asked, 24 with those of yesterday withhold', () => {
	const doubled = look({ days: [partDay(TODAY, 6)] });
	expect(onFoot(doubled).required_m).toBeCloseTo(0.3, 9);
	expect(codes(doubled)).toContain('warmSpell');
	expect(doubled.warmSpell).toMatchObject({ state: 'doubled', since: TODAY });
	expect(onFoot(look({ days: [partDay(TODAY, 5)] })).required_m).toBeCloseTo(0.15, 9);
	const eighteen = look({ days: [partDay(TODAY, 18)] });
	expect(eighteen.warmSpell.state).toBe('doubled');
	expect(onFoot(look({ days: [partDay(TODAY, 24)] })).status).toBe('withheld');
});

test('warm hours of two part days count together', () => {
	const now = '2027-01-31';
	const two = look({ now, days: [partDay(TODAY, 3), partDay(now, 3)] });
	expect(two.warmSpell.state).toBe('doubled');
	const apart = look({
		now: '2027-02-01',
		days: [partDay(TODAY, 3), partDay('2027-01-31', 0), partDay('2027-02-01', 3)]
	});
	expect(apart.warmSpell.state).toBe('none');
});

test.each(['wet', 'candled'] as const)(
	'a %s core of today withholds every status at once',
	(core) => {
		const answer = look({ readings: [reading(TODAY, [0.5], { core })] });
		expect(onFoot(answer).status).toBe('withheld');
		expect(codes(answer)).toContain('badCore');
	}
);

test('a hole of 5 cm today caps the bound at once, on that day and on those to come', () => {
	const until = '2027-02-10';
	const thin = reading(TODAY, [0.6, 0.05]);
	const answer = look({ readings: [thin] });
	expect(onFoot(answer)).toMatchObject({ status: 'notYet', bound_m: expect.closeTo(0.05, 9) });
	const [before, after] = [
		look({}, { until, past: [] }),
		look({ readings: [thin] }, { until, past: [] })
	];
	for (const [index, day] of after.forecast.days.entries()) {
		const cut_m =
			(before.forecast.days[index]?.bound?.effective_m ?? 0) - (day.bound?.effective_m ?? 0);
		if (day.on < AS_OF) expect(cut_m).toBe(0);
		else expect(cut_m).toBeGreaterThan(0.2);
	}
});

test('a hole that did not go through, and thick ones, leave the bound where it was', () => {
	const least = reading(TODAY, [0.05], { kind: 'atLeast' });
	const thick = reading(TODAY, [0.9, 0.95, 0.92]);
	for (const read of [least, thick])
		expect(look({ readings: [read] }).forecast.loads).toEqual(calm.forecast.loads);
});

test('holes of today make nothing reached before their day is in', () => {
	const answer = look({ readings: [{ ...HOLES, on: TODAY }] }, { readings: [] });
	expect(onFoot(answer).status).toBe('expectedNotDrilled');
	expect(codes(answer)).toContain('readingNotIn');
});

test('ice that broke today takes the support of the holes at that place, and is told', () => {
	const broke = reading(TODAY, [], { kind: 'wentThrough' });
	const answer = look({ readings: [broke] });
	expect(onFoot(answer).status).toBe('expectedNotDrilled');
	expect(codes(answer)).toContain('wentThrough');
	const elsewhere = look({ readings: [{ ...broke, place: 'north inlet' }] });
	expect(onFoot(elsewhere).status).toBe('reached');
	expect(codes(elsewhere)).toContain('wentThrough');
});

test('a site that opened today carries nothing, and after an ice-out of today neither', () => {
	const events = [{ kind: 'reopened' as const, on: TODAY, refrozeOn: null }];
	expect(onFoot(look({ events }))).toMatchObject({ status: 'notYet', bound_m: 0 });
	const gone = look({ iceOutOn: TODAY });
	expect(onFoot(gone).status).toBe('withheld');
	expect(codes(gone)).toContain('iceOut');
});

test('once a site has opened no day after it is told to have ice, nor a load to be met', () => {
	const events = [{ kind: 'reopened' as const, on: TODAY, refrozeOn: null }];
	const past = weather('2025-12-01', FROST);
	const ahead = { past, until: addDays(TODAY, 20) };
	expect(onFoot(look({}, ahead)).days.at(-1)?.pThickness).toBe(1);
	for (const opened of [look({ events }, ahead), look({ iceOutOn: TODAY }, ahead)]) {
		const { days, until } = onFoot(opened);
		expect(until).toBe(AS_OF);
		expect(days.filter(({ on }) => on >= TODAY).every(({ pThickness }) => pThickness === 0)).toBe(
			true
		);
		expect(opened.forecast.days.at(-1)?.total_m.p95).toBe(0);
	}
	expect(codes(look({ events }))).toContain('openedAgain');
});

test('a fall of more than 20 °C since yesterday halves the load', () => {
	const bare = { readings: [reading('2027-01-28', [0.5, 0.5, 0.5], { holes: [bareHole()] })] };
	const cold = look({ days: [partDay(TODAY, 0, { min_degC: -28 })] }, bare);
	expect(codes(cold)).toContain('coldSnap');
	expect(codes(look({ days: [partDay(TODAY, 0)] }, bare))).not.toContain('coldSnap');
});

function bareHole() {
	return hole({ total_m: 0.5, clear_m: 0.5, white_m: 0, snow_m: 0 });
}

test('holes age to today, and days since that nobody observed end their support', () => {
	const long = look({ now: '2027-02-20' });
	expect(onFoot(long)).toMatchObject({ status: 'expectedNotDrilled' });
	expect(onFoot(long).reason).toContain('23 days old');
	const unseen = look({ now: '2027-02-01', isWeatherOld: true });
	expect(onFoot(unseen).reason).toContain('2 days since the holes of 28 Jan without a temperature');
});

test('frost, a hole and a sound core of today do not end a spell', () => {
	const air_degC = [...FROST.slice(0, 56), 4, -10, -10, -10];
	const late = { weather: asked(air_degC).weather, readings: [HOLES] };
	const spell = look({}, late);
	expect(spell.warmSpell.state).toBe('withheld');
	const sound = reading(TODAY, [0.5, 0.5, 0.5], { core: 'sound' });
	const after = look({ days: [partDay(TODAY, 0)], readings: [sound] }, late);
	expect(after.warmSpell.state).toBe('withheld');
});

/** From the worst to the best. */
const ORDER: LoadStatus[] = ['withheld', 'notYet', 'expectedNotDrilled', 'reached'];

const anyReading: fc.Arbitrary<Reading> = fc
	.record({
		kind: fc.constantFrom<Reading['kind']>('measured', 'atLeast', 'wentThrough'),
		totals_m: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 5 }),
		core: fc.constantFrom<Reading['core']>('sound', 'wet', 'candled', null),
		place: fc.constantFrom('middle of the bay', 'north inlet', 'landing', null),
		secondHand: fc.boolean()
	})
	.map(({ totals_m, ...change }) => reading(TODAY, totals_m, change));

const anySince = fc.record({
	days: fc
		.record({ warm_h: fc.integer({ min: 0, max: 24 }), min_degC: fc.integer({ min: -35, max: 0 }) })
		.map(({ warm_h, min_degC }) => [partDay(TODAY, warm_h, { min_degC })]),
	readings: fc.array(anyReading, { maxLength: 3 }),
	isWeatherOld: fc.boolean()
});

const ANY_WINTER = fc.constantFrom(
	FROST,
	[...FROST.slice(0, 57), 4, -10, -10],
	[...FROST.slice(0, 59), 2],
	FROST.map(() => -1)
);

test('nothing that is seen after the day of asking makes a status better or a bound higher', () => {
	fc.assert(
		fc.property(ANY_WINTER, anySince, fc.boolean(), (air_degC, seen, isDrilled) => {
			const { weather } = asked(air_degC);
			const change = { weather, readings: isDrilled ? [HOLES] : [] };
			const [before, after] = [look(null, change), look(seen, change)];
			for (const [index, load] of after.forecast.loads.entries()) {
				const was = before.forecast.loads[index];
				expect(ORDER.indexOf(load.status)).toBeLessThanOrEqual(
					ORDER.indexOf(was?.status ?? 'withheld')
				);
				expect(load.bound_m ?? 0).toBeLessThanOrEqual(was?.bound_m ?? 0);
				expect(load.required_m ?? 0).toBeGreaterThanOrEqual(was?.required_m ?? 0);
			}
			for (const [index, day] of after.forecast.days.entries())
				expect(day.bound?.effective_m ?? 0).toBeLessThanOrEqual(
					before.forecast.days[index]?.bound?.effective_m ?? 0
				);
		}),
		{ numRuns: 120 }
	);
});
