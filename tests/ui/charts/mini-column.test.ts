import { expect, test } from 'vitest';
import { miniColumn, miniScale } from '#lib/ui/charts/mini-column.ts';

const UNITS = { measure: 'metric', mass: 'kg' } as const;
const THICK = { snow_m: 0.1, slush_m: 0, white_m: 0.1, clear_m: 0.4, totalLower_m: 0.4 };
const THIN = { snow_m: 0.05, slush_m: 0.02, white_m: 0.05, clear_m: 0.1, totalLower_m: 0.1 };

test('columns side by side share their scale and the top of their ice', () => {
	const scale = miniScale([THICK, THIN]);
	const [thick, thin] = [THICK, THIN].map((ice) => miniColumn(ice, scale, UNITS));
	expect(thick?.zero).toBe(thin?.zero);
	const clear = [thick, thin].map((drawing) =>
		drawing?.layers.find(({ kind }) => kind === 'clear')
	);
	expect((clear[0]?.height ?? 0) / (clear[1]?.height ?? 1)).toBeCloseTo(4, 9);
	for (const drawing of [thick, thin]) {
		const white = drawing?.layers.find(({ kind }) => kind === 'white');
		expect(white?.y).toBeCloseTo(drawing?.zero ?? NaN, 9);
		expect(drawing?.doubt?.from).toBeLessThan(drawing?.doubt?.to ?? 0);
	}
	expect(thin?.layers.map(({ kind }) => kind)).toEqual(['snow', 'slush', 'white', 'clear']);
});

test('without ice there is the ruler and the water alone', () => {
	const drawing = miniColumn(null, miniScale([]), UNITS);
	expect(drawing).toMatchObject({ layers: [], doubt: null, zero: 0 });
	expect(drawing.ticks.length).toBeGreaterThan(2);
});
