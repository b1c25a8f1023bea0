import { expect, test } from 'vitest';
import { whatIf, type Change } from '#lib/model/ensemble/what-if.ts';
import { outlook } from '#lib/model/outlook.ts';
import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import { MEMBERS } from '#lib/model/site-estimate.ts';
import {
	asked,
	ownLoad,
	reading,
	record,
	weather,
	weatherDay
} from '../../support/invented-winter.ts';

/** Frost with a little snow, so that there is some to clear or double. */
const snowy = (from: IsoDate, days: number, air_degC: number) =>
	Array.from({ length: days }, (_, index) =>
		weatherDay(addDays(from, index), air_degC, {
			precipitation_kg_m2: 1.5,
			snowfall_kg_m2: 1.5
		})
	);
const PAST = ['2023', '2024', '2025'].flatMap((year) => snowy(`${year}-10-01`, 200, -8));
const INPUT = asked([], {
	weather: snowy('2026-12-01', 40, -10),
	past: PAST,
	asOf: '2027-01-09',
	until: '2027-02-15'
});
const AS_IT_IS = { snowFactor: 1, warming_K: 0, extraLoad: null };

const ahead = (change: Partial<typeof AS_IT_IS>) =>
	whatIf(INPUT, { ...AS_IT_IS, ...change }, 100)?.days.at(-1)?.total_m.p50 ?? NaN;

test('without a change it is the outlook of as many members', () => {
	expect(whatIf(INPUT, AS_IT_IS, 100)).toEqual(outlook({ ...INPUT, members: 100 })?.forecast);
});

test('without a change it is that too where a reading has just raised the bound', () => {
	const input = { ...INPUT, readings: [reading('2027-01-04', [0.3])] };
	const plain = outlook(input);
	expect(whatIf(input, AS_IT_IS, MEMBERS)).toEqual(plain?.forecast);
	const last = plain?.forecast.days.find(({ on }) => on === INPUT.asOf);
	expect(last?.bound?.total_m).toBeLessThan((last?.total_m.p10 ?? 0) - 0.005);
});

test('cleared snow grows more ice, twice the snow less', () => {
	const asItIs = ahead({});
	expect(ahead({ snowFactor: 0 })).toBeGreaterThan(asItIs + 0.02);
	expect(ahead({ snowFactor: 2 })).toBeLessThan(asItIs);
});

test('colder grows more ice, warmer less', () => {
	expect(ahead({ warming_K: -3 })).toBeGreaterThan(ahead({}));
	expect(ahead({ warming_K: 3 })).toBeLessThan(ahead({}));
});

test('what is behind is not changed', () => {
	const plain = whatIf(INPUT, AS_IT_IS, 100);
	const changed = whatIf(INPUT, { snowFactor: 0, warming_K: 3, extraLoad: null }, 100);
	const behind = (days = plain?.days) => days?.filter(({ on }) => on <= INPUT.asOf);
	expect(behind(changed?.days)).toEqual(behind());
});

test('a further load has its own answer beside the others', () => {
	const extraLoad = ownLoad(900);
	const loads = whatIf(INPUT, { ...AS_IT_IS, extraLoad }, 100)?.loads ?? [];
	expect(loads).toHaveLength(INPUT.loads.length + 1);
	expect(loads.at(-1)?.id).toBe(extraLoad.id);
});

test('rain is not made of snow, nor where there is none', () => {
	const dry = {
		...INPUT,
		weather: weather(
			'2026-12-01',
			Array.from({ length: 40 }, () => -10)
		)
	};
	const bare = { ...dry, past: PAST.map((day) => ({ ...day, snowfall_kg_m2: 0 })) };
	const twice = whatIf(bare, { ...AS_IT_IS, snowFactor: 2 }, 100);
	expect(twice?.days.at(-1)?.total_m).toEqual(whatIf(bare, AS_IT_IS, 100)?.days.at(-1)?.total_m);
});

test('without an estimate there is none with a change', () => {
	expect(whatIf({ ...INPUT, record: record({ freezeUpOn: null }) }, AS_IT_IS, 100)).toBeNull();
});

test('a cold week grows more ice, and less than a cold winter does', () => {
	const ends = (change: Partial<Change>) =>
		whatIf(INPUT, { ...AS_IT_IS, ...change }, 100)?.days.at(-1)?.effective_m.p50 ?? NaN;
	const week_m = ends({ warming_K: -5, warmingDays: 7 });
	expect(week_m).toBeGreaterThan(ends({}));
	expect(week_m).toBeLessThan(ends({ warming_K: -5 }));
});

test('a fall of snow that is heavier than the ice can float makes slush', () => {
	const slush = (snowfall_kg_m2: number) => {
		const days = whatIf(INPUT, { ...AS_IT_IS, snowfall_kg_m2 }, 100)?.days ?? [];
		return Math.max(...days.filter(({ on }) => on > INPUT.asOf).map((day) => day.slush_m.p50 ?? 0));
	};
	expect(slush(60)).toBeGreaterThan(slush(0) + 0.03);
});
