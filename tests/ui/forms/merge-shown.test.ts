import { expect, test } from 'vitest';
import { FormInput, type FormValues } from '../../../src/lib/ui/forms/form-input.ts';
import { mergeShown, SHOWN, type Together } from '../../../src/lib/ui/forms/merge-shown.ts';

const UNITS = { measure: 'metric', mass: 'kg' } as const;

function merged(
	shown: FormValues,
	typed: FormValues,
	stands: FormValues,
	together: Together[] = []
): { values: FormValues; issues: FormInput['issues'] } {
	const sent = JSON.stringify({ units: UNITS, values: shown });
	const input = new FormInput({ ...typed, [SHOWN]: sent });
	mergeShown(input, () => stands, { together });
	const { [SHOWN]: _, ...values } = input.values;
	return { values, issues: input.issues };
}

test.each([
	['left alone, and changed by another', '3', '3', '5', '5'],
	['changed here alone', '3', '4', '3', '4'],
	['emptied here alone', '3', '', '3', ''],
	['changed alike by both', '3', '5', '5', '5'],
	['left alone by both', '3', '3', '3', '3'],
	['emptied by another', '3', '3', '', '']
])('a field %s', (_, shown, typed, stands, comes) => {
	const { values, issues } = merged({ mass_kg: shown }, { mass_kg: typed }, { mass_kg: stands });
	expect(values).toEqual({ mass_kg: comes });
	expect(issues).toEqual([]);
});

test('what both have changed is asked about, with what stands and its unit', () => {
	const { values, issues } = merged({ mass_kg: '3' }, { mass_kg: '4' }, { mass_kg: '5' });
	expect(values).toEqual({ mass_kg: '4' });
	expect(issues).toMatchObject([{ field: 'mass_kg', keep: 'Mine is right' }]);
	expect(issues[0]?.message).toContain('now it is 5 kg.');
	const days = { shown: '2026-11-20', typed: '2026-11-22', stands: '2026-11-29' };
	const ofDays = merged({ on: days.shown }, { on: days.typed }, { on: days.stands });
	expect(ofDays.issues[0]?.message).toContain('now it is 29 Nov 2026.');
	const kept = { mass_kg: '4', 'keep.mass_kg': '4' };
	expect(merged({ mass_kg: '3' }, kept, { mass_kg: '5' }).issues).toEqual([]);
});

test('what both have changed, and one to nothing, is asked about as well', () => {
	expect(merged({ a: '3' }, { a: '' }, { a: '5' }).issues).toHaveLength(1);
	expect(merged({ a: '3' }, {}, { a: '5' }).issues).toHaveLength(1);
	expect(merged({ a: '3' }, { a: '', 'keep.a': '' }, { a: '5' }).issues).toEqual([]);
	expect(merged({ a: '3' }, { a: '5' }, { a: '' }).issues[0]?.message).toContain('it is empty.');
});

test('a tick that another has set or taken away is taken over, and a box that has come since', () => {
	expect(merged({}, {}, { current: 'yes' }).values).toEqual({ current: 'yes' });
	expect(merged({ current: 'yes' }, { current: 'yes' }, {}).values).toEqual({});
	expect(merged({ a: 'yes' }, {}, { a: 'yes', b: 'yes' }).values).toEqual({ b: 'yes' });
});

test('fields that belong together come from one side', () => {
	const place: Together = { has: (field) => field !== 'name', at: 'north', said: () => 'there' };
	const at = (north: string, east: string, name = 'x') => ({ north, east, name });
	const shown = at('1', '2');
	expect(merged(shown, at('1', '2', 'y'), at('8', '9'), [place]).values).toEqual(at('8', '9', 'y'));
	const both = merged(shown, at('1', '3'), at('8', '2'), [place]);
	expect(both.values).toEqual(at('1', '3'));
	expect(both.issues).toMatchObject([{ field: 'north' }]);
	expect(both.issues[0]?.message).toContain('now it is there');
});

test.each([undefined, '', 'x', '3', 'null', '[]', '{"values":3}'])(
	'a form that tells nothing of its page is taken as it is: %s',
	(sent) => {
		const input = new FormInput({ a: '4', ...(sent === undefined ? {} : { [SHOWN]: sent }) });
		mergeShown(input, () => ({ a: '5' }));
		expect(input.values['a']).toBe('4');
		expect(input.issues).toEqual([]);
	}
);

test('numbers are those of the units that the page was shown in', () => {
	const units = { measure: 'imperial', mass: 'lb' };
	const input = new FormInput({ a: '1', [SHOWN]: JSON.stringify({ units, values: { a: '1' } }) });
	mergeShown(input, ({ mass }) => ({ a: mass }));
	expect(input.values['a']).toBe('lb');
});

test.each(['one\r\ntwo', 'onetwo', ' one\ntwo '])(
	'lines that a browser has sent in its own way are as they were shown: %j',
	(typed) => {
		const { values, issues } = merged({ note: 'one\ntwo' }, { note: typed }, { note: 'three' });
		expect(values).toEqual({ note: 'three' });
		expect(issues).toEqual([]);
	}
);
