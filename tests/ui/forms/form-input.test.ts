import { expect, test } from 'vitest';
import { FormInput } from '#lib/ui/forms/form-input.ts';
import { fieldText, fieldUnit } from '#lib/ui/forms/quantity.ts';

const IMPERIAL = { measure: 'imperial', mass: 'lb' } as const;
const METRIC = { measure: 'metric', mass: 'kg' } as const;

test('a thickness comes in centimetres or inches, whichever its field was named in', () => {
	expect(new FormInput({ total_cm: '23,5' }).quantity('total', 'length')).toBe(0.235);
	expect(new FormInput({ total_in: '9' }).quantity('total', 'length')).toBe(0.2286);
});

test('a mass comes in kilograms or pounds', () => {
	expect(new FormInput({ mass_kg: '2900' }).quantity('mass', 'mass')).toBe(2900);
	// 1 lb is 0.45359237 kg exactly: international yard and pound agreement, 1959.
	expect(new FormInput({ mass_lb: '5000' }).quantity('mass', 'mass')).toBeCloseTo(2267.96185, 9);
});

test('an area and a height come in acres and feet too', () => {
	expect(new FormInput({ area_acre: '640' }).quantity('area', 'area')).toBeCloseTo(2.589988, 6);
	expect(new FormInput({ elevation_ft: '1000' }).quantity('elevation', 'height')).toBe(304.8);
	expect(new FormInput({ density_lb_ft3: '62.428' }).quantity('density', 'density')).toBeCloseTo(
		1000,
		2
	);
});

test('what is left empty is absent, and a missing number is asked for where it is needed', () => {
	const input = new FormInput({ total_cm: ' ' });
	expect(input.quantity('total', 'length')).toBeNull();
	expect(input.issues).toEqual([]);
	expect(input.quantity('total', 'length', { isRequired: true })).toBeNull();
	expect(input.issues).toEqual([{ field: 'total_cm', message: 'Type a number of cm.' }]);
});

test('limits are told in the unit of the field', () => {
	const input = new FormInput({ total_in: '300', snow_cm: '-1' });
	expect(input.quantity('total', 'length', { from: 0, to: 6 })).toBeNull();
	expect(input.quantity('snow', 'length', { from: 0, to: 6 })).toBeNull();
	expect(input.issues).toEqual([
		{ field: 'total_in', message: 'Type 236.2 inches or less.' },
		{ field: 'snow_cm', message: 'Type 0 cm or more.' }
	]);
});

test('a field left as it was shown keeps the stored value to the last digit', () => {
	const stored = 0.2337;
	const shown = fieldText(stored, fieldUnit('length', IMPERIAL));
	expect(shown).toBe('9.201');
	const input = new FormInput({ total_in: shown });
	expect(input.quantity('total', 'length', { stored })).toBe(stored);
	expect(input.quantity('total', 'length')).not.toBe(stored);
});

test('an unchanged empty field stays unknown', () => {
	expect(new FormInput({ total_cm: '' }).quantity('total', 'length', { stored: null })).toBeNull();
});

test('a question is asked until the same value comes back with its box ticked', () => {
	const ask = (values: Record<string, string>) => {
		const input = new FormInput(values);
		input.ask('total_cm', 'Is it really 250 cm?', 'It is 250 cm');
		return input.issues;
	};
	const question = { field: 'total_cm', message: 'Is it really 250 cm?', keep: 'It is 250 cm' };
	expect(ask({ total_cm: '250' })).toEqual([question]);
	expect(ask({ total_cm: '250', 'keep.total_cm': '250' })).toEqual([]);
	expect(ask({ total_cm: '260', 'keep.total_cm': '250' })).toEqual([question]);
});

test('what a schema refuses stands beside its field', () => {
	const input = new FormInput({ name: '', 'holes.0.total_in': '7' });
	input.refuseAll([
		{ path: ['name'], message: 'must not be empty' },
		{ path: ['holes', 0], message: 'must hold at least one measured value' },
		{ path: ['holes', 0, 'total_m'], message: 'must be from 0 to 6 m' },
		{ path: ['elsewhere'], message: 'No such thing' }
	]);
	expect(input.issues).toEqual([
		{ field: 'name', message: 'This must not be empty.' },
		{ field: 'holes.0.total_in', message: 'This must hold at least one measured value.' },
		{ field: 'holes.0.total_in', message: 'This must be from 0 to 6 m.' },
		{ field: 'elsewhere', message: 'No such thing' }
	]);
});

test('units of a field follow the setting', () => {
	expect(fieldUnit('length', METRIC).suffix).toBe('cm');
	expect(fieldUnit('length', IMPERIAL).suffix).toBe('in');
	expect(fieldUnit('mass', { measure: 'metric', mass: 'lb' }).suffix).toBe('lb');
	expect(fieldUnit('mass', { measure: 'imperial', mass: 'kg' }).suffix).toBe('kg');
});

test('a day is a real day or is refused', () => {
	const input = new FormInput({ on: '2027-02-30', by: '2027-02-28' });
	expect(input.day('on')).toBeNull();
	expect(input.day('by')).toBe('2027-02-28');
	expect(input.issues.map(({ field }) => field)).toEqual(['on']);
});

test('what a schema says comes in the same round, but for fields that are refused already', () => {
	const problems = ['a', 'mass_kg', 'count'].map((field) => ({ path: [field], message: 'No' }));
	const row = { path: ['holes', 0], message: 'must hold at least one measured value' };
	const failed = { success: false, error: { issues: [...problems, row] } } as const;
	const input = new FormInput({ a: '', mass_lb: 'x', count: '0', 'holes.1.snow_cm': 'x' });
	input.refuse('a', 'Type it.');
	input.quantity('mass', 'mass');
	input.quantity('holes.1.snow', 'length');
	expect(input.take(failed)).toBeNull();
	expect(input.issues.map(({ field }) => field)).toEqual([
		'a',
		'mass_lb',
		'holes.1.snow_cm',
		'count'
	]);
});

test('a schema is not heard of a field that is refused', () => {
	const failed = { success: false, error: { issues: [{ path: ['a'], message: 'No' }] } } as const;
	const clean = new FormInput({ a: '1' });
	expect(clean.take(failed)).toBeNull();
	expect(clean.issues).toEqual([{ field: 'a', message: 'No' }]);
	const wrong = new FormInput({ a: '1' });
	wrong.refuse('a', 'Not like this.');
	expect(wrong.take(failed)).toBeNull();
	expect(wrong.take({ success: true, data: 1 })).toBeNull();
	expect(wrong.issues).toEqual([{ field: 'a', message: 'Not like this.' }]);
	expect(new FormInput({}).take({ success: true, data: 1 })).toBe(1);
});

test('a choice that is none is not answered by the list of what programs may send', () => {
	const input = new FormInput({ use: 'sledge' });
	input.refuseAll([
		{ path: ['use'], message: 'Invalid option: expected one of "car"|"sled"' },
		{ path: ['use'], message: 'must be one of the loads' }
	]);
	expect(input.issues.map(({ message }) => message)).toEqual([
		'Choose one of those that are offered.',
		'This must be one of the loads.'
	]);
});
