import { expect, test } from 'vitest';
import { chartMinimum, isVehicle } from '#lib/model/load-case.ts';
import { MINIMUMS, load, ownLoad } from '../support/invented-winter.ts';

test('people on foot are no vehicle, machines are', () => {
	expect(isVehicle(load('on-foot'))).toBe(false);
	expect(isVehicle(load('two-with-sled'))).toBe(false);
	expect(isVehicle(load('snowmobile'))).toBe(true);
});

test('a load that somebody names is a vehicle when it is heavier than two people and a sled', () => {
	expect(isVehicle(ownLoad(250))).toBe(false);
	expect(isVehicle(ownLoad(251))).toBe(true);
});

test('what is too heavy for a person, or for people to draw, is a vehicle under any row', () => {
	expect(isVehicle(load('on-foot', { mass_kg: 2500 }))).toBe(true);
	expect(isVehicle(load('on-foot', { count: 5 }))).toBe(false);
	expect(isVehicle(load('two-with-sled', { mass_kg: 600 }))).toBe(false);
	expect(isVehicle(load('two-with-sled', { trailer: { mass_kg: 900, apart_m: 5 } }))).toBe(true);
});

test('a chart without the row asked for is an error that says which', () => {
	expect(() => chartMinimum([], 'strict', 'car')).toThrow(
		new RangeError('minimums must hold a strict row for car, found none')
	);
	expect(chartMinimum(MINIMUMS, 'strict', 'car').thickness_m).toBe(0.4);
});
