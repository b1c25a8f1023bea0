import { expect, test } from 'vitest';
import { pastWinters } from '#lib/model/ensemble/past-winters.ts';
import { airOf, inventedWeather, lagCorrelation, meanOf } from '../../support/invented-climate.ts';
import { weatherDay } from '../../support/weather-day.ts';

const PAST = inventedWeather('2019-07-01', '2026-06-30');

test('each earlier winter gives the stretch that follows the same date', () => {
	const winters = pastWinters(PAST, '2027-01-10', 100);
	expect(winters.map(({ winter }) => winter)).toEqual([
		'2019-20',
		'2020-21',
		'2021-22',
		'2022-23',
		'2023-24',
		'2024-25',
		'2025-26'
	]);
	expect(winters[0]?.days[0]?.on).toBe('2020-01-10');
	expect(winters[0]?.days).toHaveLength(100);
});

test('a stretch is the days of its winter in their order, over 29 February too', () => {
	const [winter] = pastWinters(PAST, '2027-01-10', 100);
	const source = PAST.filter((day) => day.on >= '2020-01-10').slice(0, 100);
	expect(winter?.days.map((day) => day.on)).toEqual(source.map((day) => day.on));
	expect(winter?.days.some((day) => day.on === '2020-02-29')).toBe(true);
	expect(lagCorrelation(winter?.days.map(airOf) ?? [])).toBe(lagCorrelation(source.map(airOf)));
});

test('from 29 February a common year goes on from the 28th', () => {
	const winters = pastWinters(PAST, '2028-02-29', 20);
	expect(winters.map(({ days }) => days[0]?.on.slice(5))).toContain('02-28');
	expect(winters.find(({ winter }) => winter === '2019-20')?.days[0]?.on).toBe('2020-02-29');
});

test('autumn and spring of one winter stay together across the new year', () => {
	const [winter] = pastWinters(PAST, '2026-11-20', 60);
	expect(winter?.days[0]?.on).toBe('2019-11-20');
	expect(winter?.days.at(-1)?.on).toBe('2020-01-18');
});

test('a winter with a temperature on fewer than nine days in ten is left out', () => {
	const without = (days: number) =>
		PAST.filter(
			(day) => day.on < '2020-02-01' || day.on >= `2020-02-${String(days + 1).padStart(2, '0')}`
		);
	expect(pastWinters(without(10), '2027-01-10', 100)[0]?.winter).toBe('2019-20');
	expect(pastWinters(without(11), '2027-01-10', 100)[0]?.winter).toBe('2020-21');
});

test('a winter whose record ends early gives its days up to there, if they are thirty', () => {
	const endingOn = (last: string) => PAST.filter((day) => day.on <= last || day.on > '2020-06-30');
	const [winter] = pastWinters(endingOn('2020-02-08'), '2027-01-10', 100);
	expect(winter).toMatchObject({ winter: '2019-20' });
	expect(winter?.days).toHaveLength(30);
	expect(winter?.days.at(-1)?.on).toBe('2020-02-08');
	expect(pastWinters(endingOn('2020-02-07'), '2027-01-10', 100)[0]?.winter).toBe('2020-21');
});

test('a missing day has the mean of those within a week, and unknown precipitation', () => {
	const holed = PAST.map((day) => (day.on === '2020-02-05' ? { ...day, air_degC: null } : day));
	const winters = pastWinters(holed, '2027-01-10', 100);
	const filled = winters[0]?.days.find((day) => day.on === '2020-02-05');
	const index = winters[0]?.days.findIndex((day) => day.on === '2020-02-05') ?? 0;
	const near = winters.flatMap(({ days }) => days.slice(index - 7, index + 8).map(airOf));
	expect(filled?.precipitation_kg_m2).toBeNull();
	expect(airOf(filled)).toBeCloseTo(meanOf(near), 1);
});

test('days that report only minimum and maximum count by the middle of them', () => {
	const ranged = PAST.map((day) => ({
		...day,
		air_degC: null,
		min_degC: airOf(day) - 4,
		max_degC: airOf(day) + 4
	}));
	const [winter] = pastWinters(ranged, '2027-01-10', 100);
	const [plain] = pastWinters(PAST, '2027-01-10', 100);
	expect(winter?.days.map(airOf)).toEqual(plain?.days.map((day) => expect.closeTo(airOf(day), 9)));
});

test('nothing stored and forecasts stored give no past winter', () => {
	expect(pastWinters([], '2027-01-10', 100)).toEqual([]);
	const forecast = PAST.map((day) => ({ ...day, source: 'forecast' as const }));
	expect(pastWinters(forecast, '2027-01-10', 100)).toEqual([]);
	expect(pastWinters([weatherDay('2026-12-01', { air_degC: 1 })], '2027-01-10', 100)).toEqual([]);
});
