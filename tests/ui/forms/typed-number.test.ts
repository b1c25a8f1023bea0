import { expect, test } from 'vitest';
import { readTypedNumber } from '#lib/ui/forms/typed-number.ts';

test.each([
	['23', 23],
	[' 23.5 ', 23.5],
	['23,5', 23.5],
	['0,123', 0.123],
	['−3,5', -3.5],
	['-3.5', -3.5],
	['2 900', 2900],
	['2\u202f900', 2900],
	['.5', 0.5],
	['', null],
	['   ', null]
])('"%s" is read as %s', (text, value) => {
	expect(readTypedNumber(text)).toEqual({ value, problem: null });
});

test.each(['abc', '23 cm', '1e5', '--3', '1.2.3', 'NaN', 'Infinity', '0x10', '12-14'])(
	'"%s" is refused by name',
	(text) => {
		const { value, problem } = readTypedNumber(text);
		expect(value).toBeNull();
		expect(problem).toContain(`“${text}” is not a number`);
	}
);

test('a comma that may stand for thousands is asked about', () => {
	expect(readTypedNumber('2,900').problem).toBe(
		'“2,900” can be read two ways. Type 2900, or 2.900.'
	);
	expect(readTypedNumber('1,234,567').problem).toBe(
		'“1,234,567” can be read two ways. Type 1234567.'
	);
});
