import { expect, test } from 'vitest';
import { holeEffective_m, holeTotal_m, isDrilled } from '#lib/model/hole.ts';
import { column, hole, reading } from '../support/invented-winter.ts';

const quarterWhite = column({ clear_m: 0.3, white_m: 0.1 });

test('the layers of a hole count, white at half', () => {
	expect(holeEffective_m(hole({ clear_m: 0.2, white_m: 0.1 }), column())).toBeCloseTo(0.25, 9);
	expect(holeEffective_m(hole({ total_m: 0.3, clear_m: 0.2 }), column())).toBeCloseTo(0.25, 9);
	expect(holeEffective_m(hole({ total_m: 0.3, white_m: 0.1 }), column())).toBeCloseTo(0.25, 9);
});

test('a hole with its total alone is split as the site is estimated to be', () => {
	expect(holeEffective_m(hole({ total_m: 0.4 }), quarterWhite)).toBeCloseTo(0.35, 9);
});

test('a total without any estimate counts as if it were all white', () => {
	expect(holeEffective_m(hole({ total_m: 0.4 }), column())).toBeCloseTo(0.2, 9);
});

test('layers that do not sum count by the smaller account', () => {
	expect(holeTotal_m(hole({ total_m: 0.4, clear_m: 0.2, white_m: 0.1 }))).toBeCloseTo(0.3, 9);
	expect(holeTotal_m(hole({ total_m: 0.25, clear_m: 0.2, white_m: 0.1 }))).toBeCloseTo(0.25, 9);
	const counted = holeEffective_m(hole({ total_m: 0.25, clear_m: 0.2, white_m: 0.1 }), column());
	expect(counted).toBeCloseTo(0.2, 9);
});

test('a hole without a thickness has none', () => {
	expect(holeTotal_m(hole({ snow_m: 0.1 }))).toBeNull();
	expect(holeEffective_m(hole({ snow_m: 0.1 }), quarterWhite)).toBeNull();
});

test('snow alone, or ice that broke, is no drilled hole', () => {
	expect(isDrilled(reading('2027-01-01', [], { holes: [hole({ snow_m: 0.1 })] }))).toBe(false);
	expect(isDrilled(reading('2027-01-01', [0.3], { kind: 'wentThrough' }))).toBe(false);
	expect(isDrilled(reading('2027-01-01', [0.3], { kind: 'atLeast' }))).toBe(true);
});
