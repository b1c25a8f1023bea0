import { expect, test } from 'vitest';
import { anchor } from '#lib/model/anchoring.ts';
import { addDays } from '#lib/model/calendar.ts';
import { hindcast } from '#lib/model/ensemble/hindcast.ts';
import { observations } from '#lib/model/ensemble/observation.ts';
import { outlook } from '#lib/model/outlook.ts';
import type { Reading } from '#lib/model/reading.ts';
import { warmSpells } from '#lib/model/warm-spell.ts';
import { asked, column, hole, load, reading, seasonDays } from '../support/invented-winter.ts';

const FROST = Array.from({ length: 45 }, () => -10);
const LAST = addDays('2026-12-01', FROST.length - 1);

function told(on: string, totals_m: number[], change: Partial<Reading> = {}): Reading {
	return reading(on, totals_m, { id: `told ${on}`, secondHand: true, ...change });
}

/** The last day of a winter of frost, and what it says of somebody on foot. */
function look(readings: Reading[]) {
	const answer = outlook(asked(FROST, { readings, loads: [load('on-foot')] }));
	const day = answer?.forecast.days.find(({ on }) => on === LAST);
	const [foot] = answer?.forecast.loads ?? [];
	return { p50_m: day?.total_m.p50 ?? NaN, bound_m: foot?.bound_m ?? NaN, foot };
}

test('what was told scatters by 3 cm more, which its holes share', () => {
	const sd = (count: number) =>
		observations(told(LAST, Array<number>(count).fill(0.4)), 0.4)[0]?.sd ?? NaN;
	// √(2.8² + 2.4² + 1² + 3²) and √(2.8² + (2.4² + 1²)/1000 + 3²) by hand
	expect(sd(1)).toBeCloseTo(0.04858, 5);
	expect(sd(1000)).toBeCloseTo(0.04104, 4);
});

test('every layer that was told is doubted more than one that was seen', () => {
	const holes = [hole({ clear_m: 0.3, white_m: 0.1, snow_m: 0.1, slush_m: 0, freeboard_m: 0 })];
	const seen = observations(reading(LAST, [], { holes }), 0.4);
	const heard = observations(told(LAST, [], { holes }), 0.4);
	expect(heard.map(({ of }) => of)).toEqual(seen.map(({ of }) => of));
	heard.forEach(({ sd }, index) => expect(sd).toBeGreaterThan(seen[index]?.sd ?? NaN));
});

test('thick ice that was told moves the estimate less than seen ice, and the bound not at all', () => {
	const none = look([]);
	const thick_m = none.p50_m + 0.1;
	const seen = look([reading(LAST, Array<number>(5).fill(thick_m))]);
	const heard = look([told(LAST, Array<number>(5).fill(thick_m))]);
	expect(heard.p50_m).toBeGreaterThan(none.p50_m);
	expect(heard.p50_m).toBeLessThan(seen.p50_m);
	expect(seen.bound_m).toBeGreaterThan(none.bound_m + 0.01);
	expect(heard.bound_m).toBeLessThanOrEqual(none.bound_m + 1e-9);
});

test('nor beside holes that were seen the same day, in whatever order they are given', () => {
	const seen = reading(LAST, [0.28, 0.3, 0.29]);
	const heard = told(LAST, [0.45]);
	const alone = look([seen]);
	const both = look([heard, seen]);
	expect(both.bound_m).toBeLessThanOrEqual(alone.bound_m + 1e-9);
	expect(look([seen, heard])).toEqual(both);
});

test('what was told stays held back until somebody drills', () => {
	const none = look([]);
	const thick_m = none.p50_m + 0.1;
	const heard = told(addDays(LAST, -1), [thick_m]);
	expect(look([heard]).bound_m).toBeLessThan(none.bound_m + 0.005);
	const seen = reading(LAST, Array<number>(5).fill(thick_m));
	expect(look([heard, seen]).bound_m).toBeGreaterThan(look([seen]).bound_m);
});

test('thin ice that was told lowers the bound at once, to what it was told to be', () => {
	const none = look([]);
	const heard = look([told(LAST, [0.12])]);
	expect(none.bound_m).toBeGreaterThan(0.13);
	expect(heard.bound_m).toBeLessThanOrEqual(0.12);
});

test('no status is reached by holes that were told, however many', () => {
	const totals_m = [0.4, 0.4, 0.4, 0.4, 0.4];
	expect(look([reading(LAST, totals_m)]).foot?.status).toBe('reached');
	const { foot } = look([told(LAST, totals_m)]);
	expect(foot?.status).toBe('expectedNotDrilled');
	expect(foot?.reason).toContain(
		'0 holes of 14 Jan count, not the 5 that lie elsewhere or that somebody else told'
	);
});

test('told and seen holes do not make up the number together', () => {
	const { foot } = look([reading(LAST, [0.4, 0.4]), told(LAST, [0.4])]);
	expect(foot?.status).toBe('expectedNotDrilled');
});

test('a thin hole that was told takes away what others had reached', () => {
	const seen = reading(addDays(LAST, -1), [0.4, 0.4, 0.4]);
	expect(look([seen]).foot?.status).toBe('reached');
	expect(look([seen, told(LAST, [0.08])]).foot?.status).not.toBe('reached');
	expect(look([seen, told(seen.on, [0.08])]).foot?.status).not.toBe('reached');
});

test('what was told does not make the snow known', () => {
	const snow = { holes: [hole({ total_m: 0.3, snow_m: 0.02 })] };
	const unknown = { precipitation_kg_m2: null, snowfall_kg_m2: null };
	const weather = asked(FROST).weather.map((day) => ({ ...day, ...unknown }));
	const known = (each: Reading) => outlook(asked(FROST, { weather, readings: [each] }))?.snowKnown;
	expect(known(reading(LAST, [], snow))).toBe(true);
	expect(known(told(LAST, [], snow))).toBe(false);
});

test('a sound core that was told lifts nothing, a wet or candled one counts', () => {
	const rotting = column({ clear_m: 0.3, liquidFraction: 0.2 });
	const after = (each: Reading) => anchor(rotting, [each]).column.liquidFraction;
	expect(after(reading(LAST, [0.3], { core: 'sound' }))).toBe(0);
	expect(after(told(LAST, [0.3], { core: 'sound' }))).toBe(0.2);
	expect(after(told(LAST, [0.3], { core: 'candled' }))).toBe(0.3);
	const { column: same, anchoredBy } = anchor(rotting, [told(LAST, [0.5])]);
	expect({ clear_m: same.clear_m, anchoredBy }).toEqual({ clear_m: 0.3, anchoredBy: [] });
});

test('a hole that was told ends no warm spell, and a sound core no bad one', () => {
	const thaw = { air_degC: 3, aboveFreezing_h: 24, freezing_degCd: 0, thawing_degCd: 3 };
	const days = seasonDays('2027-01-10', [thaw, {}, {}, {}, {}, {}]);
	const state = (...readings: Reading[]) => warmSpells(days, readings, () => true).at(-1)?.state;
	const on = '2027-01-14';
	expect(state(reading(on, [0.3]))).toBe('none');
	expect(state(told(on, [0.3]))).toBe('withheld');
	const frost = seasonDays('2027-01-10', [{}, {}, {}]);
	const cores = (...readings: Reading[]) => warmSpells(frost, readings, () => true).at(-1)?.state;
	const wet = told('2027-01-11', [0.3], { core: 'wet' });
	expect(cores(wet)).toBe('withheld');
	expect(cores(wet, reading('2027-01-12', [0.3], { core: 'sound' }))).toBe('none');
	expect(cores(wet, told('2027-01-12', [0.3], { core: 'sound' }))).toBe('withheld');
});

test('how good the estimates were is not judged by what was told', () => {
	const readings = [reading('2026-12-20', [0.15]), told('2027-01-05', [0.25])];
	expect(hindcast(asked(FROST, { readings })).map(({ on }) => on)).toEqual(['2026-12-20']);
});
