import { expect, test } from 'vitest';
import { floodsWithMoreSnow_m } from '#lib/model/more-snow.ts';
import { column } from '../support/invented-winter.ts';

test('30 cm of clear ice under 5 cm of snow at 250 float 5 cm more (Archimedes, 10.1 cm in all [C])', () => {
	const ice = column({ clear_m: 0.3, snow_m: 0.05, snowDensity_kg_m3: 250 });
	expect(floodsWithMoreSnow_m(ice)).toBeCloseTo((0.3 * 84) / 250 - 0.05, 6);
});

test('overloaded ice floats no more, and open water none', () => {
	expect(floodsWithMoreSnow_m(column({ clear_m: 0.1, snow_m: 0.3, snowDensity_kg_m3: 250 }))).toBe(
		0
	);
	expect(floodsWithMoreSnow_m(column())).toBeNull();
});
