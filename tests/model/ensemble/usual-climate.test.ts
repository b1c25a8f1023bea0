import { describe, expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { placeOffset, PLACE_SPREAD_K } from '#lib/model/ensemble/place-offset.ts';
import { seededRandom } from '#lib/model/ensemble/random.ts';
import { usualAir_degC } from '#lib/model/ensemble/usual-climate.ts';
import { usualDays, usualWinter } from '#lib/model/ensemble/usual-winter.ts';
import type { LakeFacts } from '#lib/model/lake.ts';
import { airOf, lagCorrelation, meanOf, spreadOf } from '../../support/invented-climate.ts';
import { LAKE } from '../../support/invented-winter.ts';
import { hasMeasuredWinters, tidyWeather } from '../../support/tidy-weather.ts';
import { weatherDay } from '../../support/weather-day.ts';

function lake(latitude: number, longitude: number, elevation_m: number): LakeFacts {
	return { ...LAKE, latitude, longitude, elevation_m };
}

test.each([
	// January and July means of published climate normals, rounded [M-med]; none may be off by 10 K.
	['Winnipeg', 49.9, -97.2, 239, -16.5, 19.7],
	['Montreal', 45.5, -73.6, 36, -10, 21],
	['Anchorage', 61.2, -150, 40, -8.5, 15],
	['Fairbanks', 64.8, -147.7, 133, -22, 17],
	['Stockholm', 59.3, 18, 30, -2.5, 18],
	['Oulu', 65, 25.5, 10, -10, 16.5],
	['Kiruna', 67.8, 20.3, 450, -13, 13],
	['Moscow', 55.75, 37.6, 150, -7.5, 19],
	['Davos', 46.8, 9.8, 1590, -5, 12.5],
	['Irkutsk', 52.3, 104, 450, -18, 18],
	['Minneapolis', 45, -93, 250, -9.5, 23],
	['Roeros', 62.6, 11.4, 625, -10, 12.5]
])('the usual climate resembles the normals of %s', (_, latitude, longitude, height, jan, jul) => {
	const place = lake(latitude, longitude, height);
	expect(Math.abs(usualAir_degC(place, '2027-01-16') - jan)).toBeLessThan(10);
	expect(Math.abs(usualAir_degC(place, '2027-07-16') - jul)).toBeLessThan(6);
});

test('winters get colder northward and upward, and come half a year later in the south', () => {
	const january = (place: LakeFacts) => usualAir_degC(place, '2027-01-20');
	expect(january(lake(60, -90, 0))).toBeLessThan(january(lake(50, -90, 0)));
	expect(january(lake(50, -90, 1000))).toBeCloseTo(january(lake(50, -90, 0)) - 6.5, 6);
	expect(january(lake(-45, 170, 300))).toBeGreaterThan(
		usualAir_degC(lake(-45, 170, 300), '2027-07-20')
	);
});

test('an unknown elevation counts as sea level, which is mild', () => {
	const unknown = usualAir_degC({ ...LAKE, elevation_m: null }, '2027-01-20');
	expect(unknown).toBe(usualAir_degC({ ...LAKE, elevation_m: 0 }, '2027-01-20'));
});

test('invented winters are unbiased, and their days keep 0.8 of their anomaly', () => {
	const random = seededRandom(1);
	const usual = usualDays(LAKE, '2026-12-01', 120);
	const winters = Array.from({ length: 200 }, () =>
		usualWinter(usual, 46, { offset_K: 0, wetness: 0 }, random).map(
			(day) => airOf(day) - usualAir_degC(LAKE, day.on)
		)
	);
	expect(Math.abs(meanOf(winters.flat()))).toBeLessThan(0.4);
	expect(spreadOf(winters.flat())).toBeCloseTo(5, 0);
	expect(meanOf(winters.map(lagCorrelation))).toBeGreaterThan(0.7);
	expect(meanOf(winters.map(lagCorrelation))).toBeLessThan(0.82);
});

test('invented winters have wet and dry days that come to the usual amount', () => {
	const days = usualWinter(
		usualDays(LAKE, '2026-12-01', 4000),
		46,
		{ offset_K: 0, wetness: 0.2 },
		seededRandom(2)
	);
	const wet = days.filter((day) => (day.precipitation_kg_m2 ?? 0) > 0);
	expect(wet.length / days.length).toBeCloseTo(0.45, 1);
	const cold = days.filter((day) => airOf(day) < 0);
	const amount = meanOf(cold.map((day) => day.precipitation_kg_m2 ?? 0));
	// The model's own prior: 1.6 kg/m² a day at freezing, less in deeper cold.
	expect(amount).toBeGreaterThan(0.8);
	expect(amount).toBeLessThan(1.6);
	expect(cold.every((day) => day.snowfall_kg_m2 === day.precipitation_kg_m2)).toBe(true);
});

test('nothing observed leaves the place as wide as the scatter of stations', () => {
	expect(placeOffset(LAKE, [])).toEqual({ mean_K: 0, spread_K: PLACE_SPREAD_K });
});

test('a winter observed 4 K cold moves the place half of the way, and narrows it', () => {
	const colder = (days: number) =>
		Array.from({ length: days }, (_, index) => {
			const on = addDays('2026-12-01', index);
			return weatherDay(on, { air_degC: usualAir_degC(LAKE, on) - 4 });
		});
	const few = placeOffset(LAKE, colder(5));
	const many = placeOffset(LAKE, colder(120));
	expect(many.mean_K).toBeLessThan(-2);
	expect(many.mean_K).toBeGreaterThan(-4);
	expect(few.mean_K).toBeGreaterThan(many.mean_K);
	expect(many.spread_K).toBeLessThan(few.spread_K);
	expect(many.spread_K).toBeGreaterThan(1.5);
});

test('summers say nothing about winters', () => {
	const july = [weatherDay('2026-07-10', { air_degC: 40 })];
	expect(placeOffset(LAKE, july).mean_K).toBe(0);
});

describe.runIf(hasMeasuredWinters)('beside measured winters', () => {
	test.each([
		// Five lakes' positions as the folder states them.
		['ntl_trout_lake_area', lake(46.03, -89.63, 500)],
		['fi_kallavesi', lake(62.83, 27.77, 0)]
	])('the usual December to March is within 5 K at %s', (dataset, place) => {
		const winter = tidyWeather(dataset, '1960-07-01', '2000-06-30').filter(
			(day) => ['12', '01', '02', '03'].includes(day.on.slice(5, 7)) && day.air_degC !== null
		);
		const measured = meanOf(winter.map(airOf));
		const usual = meanOf(winter.map((day) => usualAir_degC(place, day.on)));
		expect(winter.length).toBeGreaterThan(2000);
		expect(Math.abs(usual - measured)).toBeLessThan(5);
	});
});
