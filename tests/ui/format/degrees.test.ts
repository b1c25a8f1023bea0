import { expect, test } from 'vitest';
import { degreeDays, temperature } from '#lib/ui/format/degrees.ts';
import type { Units } from '#lib/ui/units-setting.ts';

const METRIC: Units = { measure: 'metric', mass: 'kg' };
const IMPERIAL: Units = { measure: 'imperial', mass: 'lb' };

test('temperatures and degree-days follow the measure', () => {
	expect(temperature(-7.2, METRIC)).toBe('−7 °C');
	expect(temperature(-40, IMPERIAL)).toBe('−40 °F');
	expect(temperature(-0.2, METRIC)).toBe('0 °C');
	// ice-science 0.2 [C]: 1 °C·d = 1.8 °F·d
	expect(degreeDays(1000, IMPERIAL)).toBe('1,800 °F·d');
});

test('degrees that are not known say so', () => {
	expect(temperature(null, METRIC)).toBe('not known');
	expect(degreeDays(null, IMPERIAL)).toBe('not known');
});
