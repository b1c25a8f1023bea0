import { expect, test } from 'vitest';
import { mass } from '#lib/ui/format/mass.ts';

test('masses carry their unit', () => {
	expect(mass(2900, { measure: 'metric', mass: 'kg' })).toBe('2,900 kg');
	// ice-science 0.2 [C]: a short ton is 907.185 kg
	expect(mass(907.185, { measure: 'imperial', mass: 'lb' })).toBe('2,000 lb');
});
