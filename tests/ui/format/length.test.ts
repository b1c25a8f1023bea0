import { expect, test } from 'vitest';
import { depth, rate, requirement, thickness } from '#lib/ui/format/length.ts';
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

test('a length that is not known says so', () => {
	expect(thickness(null, METRIC)).toBe('not known');
	expect(requirement(null, METRIC)).toBe('not known');
	expect(depth(null, IMPERIAL)).toBe('not known');
});

test('rates carry their unit and leave the sign to the sentence', () => {
	expect(rate(-0.0082, METRIC)).toBe('8 mm a day');
	expect(rate(0.0082, IMPERIAL)).toBe('0.3 in a day');
});
