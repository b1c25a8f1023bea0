import { expect, test } from 'vitest';
import { CLEAR_ICE_kg_m3, WATER_kg_m3 } from '#lib/model/constants.ts';
import { buoyancy_kg_m2, freeboard_m } from '#lib/model/flooding.ts';
import { bank_kg_m, bankWidth_m, widthAlone_m } from '#lib/model/tracks/bank-load.ts';

const CLEARING = { clear_m: 0.3, white_m: 0, snow_kg_m2: 18, cleared_kg_m2: 18, width_m: 8 };

test('what is cleared lies on the two banks, no more and no less', () => {
	// 18 kg/m² from 8 m: 144 kg a metre, half of it on each side.
	expect(2 * bank_kg_m(CLEARING)).toBeCloseTo(144, 12);
});

test('spread so wide, a bank puts the ice level with the water (Archimedes)', () => {
	// 0.3 m × (1000 - 916) = 25.2 kg/m² float; 18 lie there: 72/(25.2 - 18) = 10 m [C].
	expect(0.3 * (WATER_kg_m3 - CLEAR_ICE_kg_m3)).toBeCloseTo(25.2, 9);
	const width_m = bankWidth_m(CLEARING) ?? NaN;
	expect(width_m).toBeCloseTo(10, 9);
	const load_kg_m2 = CLEARING.snow_kg_m2 + bank_kg_m(CLEARING) / width_m;
	expect(freeboard_m(buoyancy_kg_m2(0.3, 0), load_kg_m2)).toBeCloseTo(0, 12);
	expect(bankWidth_m({ ...CLEARING, snow_kg_m2: 25.2 })).toBeNull();
});

test('a sheet of 30 cm hangs together over twice its characteristic length', () => {
	// ℓ = 6.27 m at E = 6 GPa and ν = 0.33 [C].
	expect(widthAlone_m(0.3)).toBeCloseTo(2 * 6.27, 1);
});
