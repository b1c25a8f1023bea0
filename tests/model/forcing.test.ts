import { expect, test } from 'vitest';
import { dayForcing } from '#lib/model/forcing.ts';
import { usualPrecipitation_kg_m2 } from '#lib/model/snow-prior.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import { weatherDay } from '../support/weather-day.ts';

const ON = '2027-01-10';

test('reported snowfall is used as it is and the rest of the precipitation is rain', () => {
	const day = forced({ air_degC: 0.5, precipitation_kg_m2: 8, snowfall_kg_m2: 3 });
	expect(day).toMatchObject({ snowfall_kg_m2: 3, rain_kg_m2: 5, hasSnow: true });
});

test('precipitation alone is divided by temperature', () => {
	expect(forced({ air_degC: -4, precipitation_kg_m2: 8 })).toMatchObject({
		snowfall_kg_m2: 8,
		rain_kg_m2: 0,
		hasSnow: true
	});
	expect(forced({ air_degC: 1, precipitation_kg_m2: 8 }).rain_kg_m2).toBe(4);
});

test('unknown snow is the usual snow, not none', () => {
	const day = forced({ air_degC: -5 });
	expect(day.hasSnow).toBe(false);
	expect(day.snowfall_kg_m2).toBe(usualPrecipitation_kg_m2(46, -5));
	expect(day.snowfall_kg_m2).toBeGreaterThan(0.5);
});

test('the rise of the snow on land stands in for unreported snowfall', () => {
	const before = weatherDay('2027-01-09', { landSnow_m: 0.2 });
	const risen = forced({ air_degC: -10, landSnow_m: 0.3 }, before);
	expect(risen.snowfall_kg_m2).toBeCloseTo(0.1 * risen.freshSnow_kg_m3, 12);
	expect(forced({ air_degC: -10, landSnow_m: 0.15 }, before).snowfall_kg_m2).toBe(0);
	expect(risen.hasSnow).toBe(false);
});

test('a day without temperature has the thaw of its neighbours and no frost', () => {
	const day = dayForcing(
		{ on: ON, dayOfYear: 10, reported: null, likelyAir_degC: 1 },
		null,
		46,
		100
	);
	expect(day).toMatchObject({ freezing_degCd: 0, aboveFreezing_h: null, hasAir: false });
	expect(day.thawing_degCd).toBeGreaterThan(1);
});

test('usual winter precipitation is less in the north and in deep cold', () => {
	expect(usualPrecipitation_kg_m2(45, -3)).toBeGreaterThan(usualPrecipitation_kg_m2(70, -3));
	expect(usualPrecipitation_kg_m2(45, -3)).toBeGreaterThan(usualPrecipitation_kg_m2(45, -25));
	expect(usualPrecipitation_kg_m2(90, -40)).toBeGreaterThan(0);
});

function forced(known: Partial<WeatherDay>, previous: WeatherDay | null = null) {
	const reported = weatherDay(ON, known);
	const day = { on: ON, dayOfYear: 10, reported, likelyAir_degC: reported.air_degC };
	return dayForcing(day, previous, 46, 100);
}
