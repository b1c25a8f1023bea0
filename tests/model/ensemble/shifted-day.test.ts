import { expect, test } from 'vitest';
import { dayDegrees, splitBySine } from '#lib/model/degree-days.ts';
import { scaleFall, shiftDay } from '#lib/model/ensemble/shifted-day.ts';
import { weatherDay } from '../../support/weather-day.ts';

test('mean, minimum and maximum are shifted alike', () => {
	const day = weatherDay('2027-01-10', { air_degC: -5, min_degC: -9, max_degC: -2 });
	expect(shiftDay(day, 3, 46)).toMatchObject({ air_degC: -2, min_degC: -6, max_degC: 1 });
});

test('a day built from hours is split anew by the sine of its own range', () => {
	const day = weatherDay('2027-01-10', {
		air_degC: -5,
		min_degC: -9,
		max_degC: -1,
		freezing_degCd: 5,
		thawing_degCd: 0,
		aboveFreezing_h: 0
	});
	expect(shiftDay(day, 4, 46)).toMatchObject(splitBySine(-1, 8));
});

test('a daily record keeps having no hours of its own', () => {
	const day = weatherDay('2027-01-10', { air_degC: -5, min_degC: -9, max_degC: -1 });
	const shifted = shiftDay(day, 4, 46);
	expect(shifted.aboveFreezing_h).toBeNull();
	expect(dayDegrees(shifted, 46)).toEqual(splitBySine(-1, 8));
});

test('where only minimum and maximum are reported both are shifted', () => {
	const day = weatherDay('2027-01-10', { min_degC: -9, max_degC: -1 });
	expect(shiftDay(day, 2, 46)).toMatchObject({ air_degC: -3, min_degC: -7, max_degC: 1 });
});

test('warmed from frost past two degrees, snow falls as rain; cooled, rain falls as snow', () => {
	const snow = weatherDay('2027-01-10', {
		air_degC: -1,
		precipitation_kg_m2: 6,
		snowfall_kg_m2: 6
	});
	expect(shiftDay(snow, 2, 46).snowfall_kg_m2).toBeCloseTo(3, 9);
	expect(shiftDay(snow, 4, 46)).toMatchObject({ precipitation_kg_m2: 6, snowfall_kg_m2: 0 });
	const rain = weatherDay('2027-01-10', {
		air_degC: 3,
		precipitation_kg_m2: 6,
		snowfall_kg_m2: 0
	});
	expect(shiftDay(rain, -4, 46)).toMatchObject({ precipitation_kg_m2: 6, snowfall_kg_m2: 6 });
});

test('snow that stays snow keeps the share that was reported', () => {
	const day = weatherDay('2027-01-10', {
		air_degC: -6,
		precipitation_kg_m2: 5,
		snowfall_kg_m2: 4
	});
	expect(shiftDay(day, 3, 46)).toMatchObject({ precipitation_kg_m2: 5, snowfall_kg_m2: 4 });
});

test('what is unknown stays unknown, and a day without temperature stays as it is', () => {
	const day = weatherDay('2027-01-10', { precipitation_kg_m2: 3 });
	expect(shiftDay(day, 5, 46)).toEqual(day);
	const dry = shiftDay(weatherDay('2027-01-10', { air_degC: 1 }), 5, 46);
	expect(dry).toMatchObject({ precipitation_kg_m2: null, snowfall_kg_m2: null });
	expect(scaleFall(dry, 2)).toMatchObject({ precipitation_kg_m2: null, snowfall_kg_m2: null });
});

test('more of what falls is more of both', () => {
	const day = weatherDay('2027-01-10', { precipitation_kg_m2: 5, snowfall_kg_m2: 4 });
	expect(scaleFall(day, 0.5)).toMatchObject({ precipitation_kg_m2: 2.5, snowfall_kg_m2: 2 });
});
