import { expect, test } from 'vitest';
import {
	age,
	counted,
	day,
	degreeDays,
	depth,
	mass,
	rate,
	requirement,
	shortDay,
	span,
	temperature,
	thickness
} from '#lib/ui/format.ts';
import type { Units } from '#lib/ui/units-setting.ts';

const METRIC: Units = { measure: 'metric', mass: 'kg' };
const IMPERIAL: Units = { measure: 'imperial', mass: 'lb' };

test('ice is never shown thicker than it is estimated', () => {
	expect(thickness(0.319, METRIC)).toBe('31 cm');
	expect(thickness(0.319, IMPERIAL)).toBe('12.5 in');
	expect(thickness(0.317, IMPERIAL)).toBe('12 in');
});

test('a sliver of ice is neither none nor a whole unit', () => {
	expect(thickness(0.007, METRIC)).toBe('under 1 cm');
	expect(thickness(0.007, IMPERIAL)).toBe('under 0.5 in');
	expect(thickness(0, METRIC)).toBe('0 cm');
});

test('a requirement is never shown smaller than it is', () => {
	expect(requirement(0.1501, METRIC)).toBe('16 cm');
	expect(requirement(0.15, METRIC)).toBe('15 cm');
	expect(requirement(0.15, IMPERIAL)).toBe('6 in');
	expect(requirement(0.51, IMPERIAL)).toBe('20.5 in');
});

test('whole units survive the conversion from metres', () => {
	for (let cm = 0; cm <= 150; cm++) {
		expect(thickness(cm / 100, METRIC)).toBe(`${cm} cm`);
		expect(requirement(cm / 100, METRIC)).toBe(`${cm} cm`);
	}
	for (let inches = 0; inches <= 60; inches++) {
		expect(thickness(inches * 0.0254, IMPERIAL)).toBe(`${inches} in`);
		expect(requirement(inches * 0.0254, IMPERIAL)).toBe(`${inches} in`);
	}
});

test('snow and water are shown to the nearest, with a true minus sign', () => {
	expect(depth(0.046, METRIC)).toBe('5 cm');
	expect(depth(-0.03, METRIC)).toBe('−3 cm');
	expect(depth(-0.001, METRIC)).toBe('0 cm');
});

test('what is not known says so', () => {
	expect(thickness(null, METRIC)).toBe('not known');
	expect(requirement(null, METRIC)).toBe('not known');
	expect(temperature(null, METRIC)).toBe('not known');
	expect(degreeDays(null, IMPERIAL)).toBe('not known');
});

test('temperatures and degree-days follow the measure', () => {
	expect(temperature(-7.2, METRIC)).toBe('−7 °C');
	expect(temperature(-40, IMPERIAL)).toBe('−40 °F');
	expect(temperature(-0.2, METRIC)).toBe('0 °C');
	// ice-science 0.2 [C]: 1 °C·d = 1.8 °F·d
	expect(degreeDays(1000, IMPERIAL)).toBe('1,800 °F·d');
});

test('masses and rates carry their unit', () => {
	expect(mass(2900, METRIC)).toBe('2,900 kg');
	// ice-science 0.2 [C]: a short ton is 907.185 kg
	expect(mass(907.185, IMPERIAL)).toBe('2,000 lb');
	expect(rate(-0.0082, METRIC)).toBe('8 mm a day');
	expect(rate(0.0082, IMPERIAL)).toBe('0.3 in a day');
});

test('days are written so that no one mixes day and month', () => {
	expect(day('2027-01-02')).toBe('2 Jan 2027');
	expect(shortDay('2026-09-30')).toBe('30 Sep');
});

test('ages are told in the words people use', () => {
	expect(age('2027-01-12', '2027-01-12')).toBe('today');
	expect(age('2027-01-11', '2027-01-12')).toBe('yesterday');
	expect(age('2027-01-09', '2027-01-12')).toBe('3 days ago');
	expect(age('2027-01-14', '2027-01-12')).toBe('2 days ahead');
	expect(span(200)).toBe('7 months');
	expect(span(1096)).toBe('3 years');
	expect(counted(1, 'hole')).toBe('1 hole');
	expect(counted(5, 'hole')).toBe('5 holes');
});
