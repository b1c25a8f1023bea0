import { expect, test } from 'vitest';
import { conductedHeat_W_m2, cover_m2K_W, grownClear_m } from '#lib/model/conduction.ts';

test('10 cm of settled snow cuts growth ninefold', () => {
	const bare = conductedHeat_W_m2(-10, 0.2, cover_m2K_W(0, 0.0876, 0, 20));
	const covered = conductedHeat_W_m2(-10, 0.2, cover_m2K_W(0.1, 0.0876, 0, 20));
	expect(bare / covered).toBeCloseTo(9.2, 1);
});

test('10 cm of white ice above take as much as 11 cm of clear', () => {
	const white = conductedHeat_W_m2(-10, 0.2, cover_m2K_W(0, 1, 0.1, 20));
	const clear = conductedHeat_W_m2(-10, 0.2 + 0.112, cover_m2K_W(0, 1, 0, 20));
	expect(white).toBeCloseTo(clear, 9);
});

test('no heat is conducted to warm air, and none makes ice', () => {
	expect(conductedHeat_W_m2(3, 0.2, 0.05)).toBe(0);
	expect(grownClear_m(0.2, 0, 0.05)).toBe(0.2);
	expect(grownClear_m(0.2, -4, 0.05)).toBe(0.2);
});
