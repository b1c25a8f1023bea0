import { expect, test } from 'vitest';
import { partDays, unbrokenTo_s } from '#lib/model/since/part-day.ts';

const SPAN = { on: '2027-01-20', start_s: 0, end_s: 86_400 };
const H = 3600;
const hour = (at_h: number, air_degC: number | null) => ({
	at_s: at_h * H,
	air_degC,
	precipitation_kg_m2: null,
	snowfall_kg_m2: null,
	landSnow_m: null,
	wind_m_s: null
});

test('eighteen hours at +6 are eighteen hours above freezing', () => {
	const hours = Array.from({ length: 18 }, (_, at) => hour(at, 6));
	expect(partDays([SPAN], hours)).toEqual([
		{ on: '2027-01-20', aboveFreezing_h: 18, min_degC: 6, max_degC: 6 }
	]);
});

test('a value of every third hour stands for three, one alone for one', () => {
	const three = [0, 3, 6].map((at) => hour(at, 2));
	expect(partDays([SPAN], three)[0]?.aboveFreezing_h).toBe(9);
	expect(partDays([SPAN], [hour(5, 2)])[0]?.aboveFreezing_h).toBe(1);
	expect(partDays([SPAN], [hour(5, 2), hour(15, 2)])[0]?.aboveFreezing_h).toBe(2);
});

test('hours without a temperature and of other days say nothing', () => {
	expect(partDays([SPAN], [hour(-2, 5), hour(3, null), hour(25, 5)])).toEqual([]);
});

test('the weather is known to the end of the hours that follow one another', () => {
	const to_h = (ats: number[]) =>
		unbrokenTo_s(
			ats.map((at) => hour(at, -2)),
			0
		) / H;
	expect(to_h([])).toBe(0);
	expect(to_h([-2, -1, 0, 1, 2])).toBe(3);
	expect(to_h([0, 3, 6, 9])).toBe(10);
	expect(to_h([0, 1, 7, 8])).toBe(2);
	expect(to_h([9, 10])).toBe(0);
});
