import { expect, test } from 'vitest';
import { futureDays } from '#lib/model/ensemble/future-days.ts';
import { weather, weatherDay } from '../../support/invented-winter.ts';

const OBSERVED = weather('2027-01-01', [-5, -6, -7]);
const forecast = (on: string, air_degC: number | null) =>
	weatherDay(on, air_degC, { source: 'forecast' });

test('without a forecast every day after asOf is left to climate', () => {
	const future = futureDays(OBSERVED, '2027-01-03', '2027-01-06');
	expect(future.before).toBe('2027-01-03');
	expect(future.beforeAir_degC).toBe(-7);
	expect(future.days.map(({ on }) => on)).toEqual(['2027-01-04', '2027-01-05', '2027-01-06']);
	expect(future.days.every((day) => day.forecast === null)).toBe(true);
});

test('a forecast is listened to for ten days', () => {
	const ahead = Array.from({ length: 14 }, (_, index) =>
		forecast(`2027-01-${String(4 + index).padStart(2, '0')}`, -3)
	);
	const future = futureDays([...OBSERVED, ...ahead], '2027-01-03', '2027-01-20');
	expect(future.days.filter((day) => day.forecast !== null).map((day) => day.lead_d)).toEqual([
		1, 2, 3, 4, 5, 6, 7, 8, 9, 10
	]);
});

test('today counts as the first day ahead while only its forecast is known', () => {
	const known = [...OBSERVED, forecast('2027-01-04', -3), forecast('2027-01-05', -2)];
	const future = futureDays(known, '2027-01-04', '2027-01-06');
	expect(future.days.map(({ on, lead_d }) => [on, lead_d])).toEqual([
		['2027-01-04', 1],
		['2027-01-05', 2],
		['2027-01-06', 3]
	]);
});

test('a day up to asOf that nobody observed or forecast is no future day', () => {
	const future = futureDays(OBSERVED, '2027-01-06', '2027-01-08');
	expect(future.before).toBe('2027-01-06');
	expect(future.beforeAir_degC).toBeNull();
	expect(future.days.map(({ on }) => on)).toEqual(['2027-01-07', '2027-01-08']);
});

test('observations after asOf are not known', () => {
	const future = futureDays(OBSERVED, '2027-01-02', '2027-01-03');
	expect(future.beforeAir_degC).toBe(-6);
	expect(future.days.map(({ on }) => on)).toEqual(['2027-01-03']);
});

test('a forecast day without a temperature is left to climate', () => {
	const known = [...OBSERVED, forecast('2027-01-04', null), forecast('2027-01-05', -2)];
	const future = futureDays(known, '2027-01-03', '2027-01-05');
	expect(future.days.map((day) => day.forecast?.air_degC ?? null)).toEqual([null, -2]);
});

test('nothing lies ahead once until has passed', () => {
	expect(futureDays(OBSERVED, '2027-01-03', '2027-01-03').days).toEqual([]);
});

test('the older a forecast, the further it looks ahead to the same day', () => {
	const known = [...OBSERVED, forecast('2027-01-04', -3), forecast('2027-01-05', -2)];
	const leads = (issuedOn: string) =>
		futureDays(known, '2027-01-03', '2027-01-05', issuedOn).days.map((day) => day.forecastLead_d);
	expect(leads('2027-01-04')).toEqual([1, 2]);
	expect(leads('2027-01-03')).toEqual([2, 3]);
	expect(leads('2027-01-01')).toEqual([4, 5]);
});

test('a fresh forecast is as good where observations end earlier', () => {
	const known = ['04', '05', '06', '07'].map((day) => forecast(`2027-01-${day}`, -3));
	const future = futureDays([...OBSERVED, ...known], '2027-01-03', '2027-01-07', '2027-01-06');
	expect(future.days.map((day) => day.forecastLead_d)).toEqual([1, 1, 1, 2]);
	expect(future.days.map((day) => day.lead_d)).toEqual([1, 2, 3, 4]);
});

test('a forecast that was issued eleven days ago is no longer listened to', () => {
	const known = [...OBSERVED, forecast('2027-01-04', -3)];
	const future = futureDays(known, '2027-01-03', '2027-01-04', '2026-12-25');
	expect(future.days.map((day) => day.forecast)).toEqual([null]);
});
