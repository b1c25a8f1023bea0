import { expect, test } from 'vitest';
import { isColdSnap } from '#lib/model/cold-snap.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import { weatherDay } from '../support/invented-winter.ts';

function on(days: WeatherDay[]) {
	return (day: string) => days.find((each) => each.on === day);
}
const only = { min_degC: null, max_degC: null };

const fall = (to: number) =>
	on([weatherDay('2027-01-09', -2, only), weatherDay('2027-01-10', to, only)]);

test('a fall of more than 20 °C between daily means counts, 20 exactly does not', () => {
	expect(isColdSnap('2027-01-10', 0.04, fall(-22.1))).toBe(true);
	expect(isColdSnap('2027-01-10', 0.04, fall(-22))).toBe(false);
});

test('with minimum and maximum the fall is from the warmest to the coldest', () => {
	const days = on([
		weatherDay('2027-01-09', -4, { max_degC: 0 }),
		weatherDay('2027-01-10', -16, { min_degC: -21 })
	]);
	expect(isColdSnap('2027-01-10', 0, days)).toBe(true);
});

test('it lasts the day of the fall and the next', () => {
	const days = on([
		weatherDay('2027-01-09', 0, only),
		weatherDay('2027-01-10', -25, only),
		weatherDay('2027-01-11', -25, only),
		weatherDay('2027-01-12', -25, only)
	]);
	expect(isColdSnap('2027-01-11', 0, days)).toBe(true);
	expect(isColdSnap('2027-01-12', 0, days)).toBe(false);
});

test('5 cm of snow keep the cold off', () => {
	const days = on([weatherDay('2027-01-09', 0, only), weatherDay('2027-01-10', -25, only)]);
	expect(isColdSnap('2027-01-10', 0.05, days)).toBe(false);
});

test('a day without a temperature is no fall', () => {
	const days = on([weatherDay('2027-01-09', null), weatherDay('2027-01-10', -25, only)]);
	expect(isColdSnap('2027-01-10', 0, days)).toBe(false);
});
