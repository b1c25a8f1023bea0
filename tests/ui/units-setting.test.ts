import { expect, test } from 'vitest';
import { DEFAULT_UNITS, parseUnits, withUnits } from '#lib/ui/units-setting.ts';

test('a kept setting is read back', () => {
	const units = { measure: 'imperial', mass: 'lb' } as const;
	expect(parseUnits(JSON.stringify(units))).toEqual(units);
});

test.each([undefined, '', 'x', 'null', '[]', '3', '{"measure":"furlong","mass":7}'])(
	'a cookie of %j falls back to centimetres and kilograms',
	(cookie) => expect(parseUnits(cookie)).toEqual(DEFAULT_UNITS)
);

test('one unit changes without the other', () => {
	expect(withUnits({ measure: 'imperial', mass: 'lb' }, { mass: 'kg' })).toEqual({
		measure: 'imperial',
		mass: 'kg'
	});
});
