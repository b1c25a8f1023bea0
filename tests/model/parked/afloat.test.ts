import fc from 'fast-check';
import { expect, test } from 'vitest';
import { buoyancy_kg_m2, freeboard_m } from '#lib/model/flooding.ts';
import { elasticSag_m } from '#lib/model/ice-plate.ts';
import { afloatUnder, floatingThickness_m } from '#lib/model/parked/afloat.ts';
import { creepFactor, creepsTo_h } from '#lib/model/parked/creep.ts';
import { ORDINARY, requirement } from '#lib/model/requirement.ts';
import { load, MINIMUMS, ownLoad } from '../../support/invented-winter.ts';

const standing = fc.record({
	mass_kg: fc.double({ min: 50, max: 5000, noNaN: true }),
	parked_h: fc.double({ min: 0, max: 2000, noNaN: true }),
	snow_kg_m2: fc.double({ min: 0, max: 100, noNaN: true })
});

test('the thickness asked for is where the sag has just used up the freeboard', () => {
	fc.assert(
		fc.property(standing, (each) => {
			const h_m = floatingThickness_m(each);
			const above_m = freeboard_m(buoyancy_kg_m2(h_m, 0), each.snow_kg_m2);
			const sag_m = creepFactor(each.parked_h) * elasticSag_m(each.mass_kg, h_m);
			expect(above_m - sag_m).toBeGreaterThanOrEqual(0);
			expect(above_m - sag_m).toBeLessThan(1e-6);
		})
	);
});

test('more load, a longer stay and more snow each ask for more', () => {
	fc.assert(
		fc.property(standing, (each) => {
			const asked_m = floatingThickness_m(each);
			for (const more of [
				{ mass_kg: 1.1 * each.mass_kg },
				{ parked_h: each.parked_h + 1 },
				{ snow_kg_m2: each.snow_kg_m2 + 1 }
			])
				expect(floatingThickness_m({ ...each, ...more })).toBeGreaterThan(asked_m);
		})
	);
});

test('creep begins at what is given at once, and its time is found back', () => {
	expect(creepFactor(0)).toBe(1);
	expect(creepFactor(2)).toBeCloseTo(3, 9);
	expect(creepsTo_h(creepFactor(37))).toBeCloseTo(37, 9);
});

test('ice that has just the thickness asked for lasts just as long as is asked', () => {
	const shelter = { mass_kg: 900, parked_h: 48, snow_kg_m2: 12 };
	const h_m = floatingThickness_m(shelter);
	const { lasts_h, sag_m, freeboard_m } = afloatUnder(shelter, { clear_m: h_m, white_m: 0 });
	expect(lasts_h).toBeCloseTo(48, 3);
	expect(sag_m).toBeCloseTo(freeboard_m, 6);
});

test('white ice floats higher and is never judged as if it did', () => {
	const shelter = { mass_kg: 900, parked_h: 48, snow_kg_m2: 12 };
	const clear = afloatUnder(shelter, { clear_m: 0.4, white_m: 0 });
	const white = afloatUnder(shelter, { clear_m: 0.3, white_m: 0.2 });
	expect(white.lasts_h).toBeGreaterThan(clear.lasts_h);
});

test('under as much snow as it can float, ice bears nothing that stands on it', () => {
	const laden = { mass_kg: 500, parked_h: 1, snow_kg_m2: 30 };
	expect(afloatUnder(laden, { clear_m: 0.3, white_m: 0 })).toMatchObject({ lasts_h: 0 });
});

test('a shelter that stands for two days under snow asks more than twice the formula', () => {
	const shelter = { ...ownLoad(900), parked_h: 48 };
	const bare = requirement(shelter, MINIMUMS, 'strict');
	const snowy = requirement(shelter, MINIMUMS, 'strict', { ...ORDINARY, snow_kg_m2: 25 });
	expect(bare.parts?.gold_m).toBeCloseTo(0.321, 3);
	// Bare and clear, 0.084 h = √(1 + 48/¼) P / (8 ρ_w ℓ²) with ℓ² = c h^1.5 has a closed form.
	const c = Math.sqrt(6e9 / (12 * (1 - 0.33 ** 2) * 1000 * 9.81));
	const factor = Math.sqrt(1 + 48 / 0.25);
	expect(bare.required_m).toBeCloseTo(((factor * 900) / (8000 * 0.084 * c)) ** 0.4, 9);
	expect(snowy.required_m).toBeGreaterThan(0.5);
	expect(snowy.parts?.decides).toBe('afloat');
	expect(snowy.rules.map(({ code }) => code)).toContain('afloat');
});

test('snow asks nothing of what keeps moving', () => {
	const deep = { ...ORDINARY, snow_kg_m2: 80 };
	expect(requirement(load('car'), MINIMUMS, 'strict', deep)).toEqual(
		requirement(load('car'), MINIMUMS, 'strict')
	);
});
