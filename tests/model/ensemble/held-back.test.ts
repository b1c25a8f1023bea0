import fc from 'fast-check';
import { expect, test } from 'vitest';
import { holdBack } from '#lib/model/ensemble/held-back.ts';

test('without readings the bound is shown as it is', () => {
	const show = holdBack();
	expect([show(0, null), show(0.1, null), show(0.2, null)]).toEqual([0, 0.1, 0.2]);
});

test('nothing of a rise by one hole comes through until another reading', () => {
	const show = holdBack();
	expect(show(0.24, { before_m: 0.2, holes: 1, thinnest_m: null })).toBeCloseTo(0.2, 9);
	expect(show(0.26, null)).toBeCloseTo(0.22, 9);
	expect(show(0.28, { before_m: 0.27, holes: 1, thinnest_m: null })).toBeCloseTo(0.27, 9);
});

test('of a rise by n holes 1 - 1/n comes through', () => {
	expect(holdBack()(0.25, { before_m: 0.2, holes: 2, thinnest_m: null })).toBeCloseTo(0.225, 9);
	expect(holdBack()(0.25, { before_m: 0.2, holes: 5, thinnest_m: null })).toBeCloseTo(0.24, 9);
});

test('a fall acts at once and in full', () => {
	expect(holdBack()(0.15, { before_m: 0.2, holes: 1, thinnest_m: null })).toBe(0.15);
});

test('a reading that is asked about raises nothing and confirms nothing', () => {
	const show = holdBack();
	show(0.24, { before_m: 0.2, holes: 1, thinnest_m: null });
	expect(show(0.4, { before_m: 0.24, holes: 0, thinnest_m: null })).toBeCloseTo(0.2, 9);
	expect(show(0.25, { before_m: 0.4, holes: 1, thinnest_m: null })).toBe(0.25);
});

test('one that is too thin to be believed still holds the bound down until another', () => {
	const show = holdBack();
	expect(show(0.28, { before_m: 0.4, holes: 0, thinnest_m: 0.1 })).toBeCloseTo(0.1, 9);
	expect(show(0.3, null)).toBeCloseTo(0.12, 9);
	expect(show(0.31, { before_m: 0.3, holes: 5, thinnest_m: null })).toBeCloseTo(0.308, 9);
});

test('a thin hole caps the bound until two more holes have been read, be it one after the other', () => {
	const single = { before_m: 0.2, holes: 1, thinnest_m: null };
	const show = holdBack();
	expect(show(0.2, { before_m: 0.25, holes: 5, thinnest_m: 0.08 })).toBeCloseTo(0.08, 9);
	expect(show(0.23, single)).toBeCloseTo(0.08, 9);
	expect(show(0.25, null)).toBeCloseTo(0.1, 9);
	expect(show(0.26, { ...single, before_m: 0.26, holes: 0 })).toBeCloseTo(0.11, 9);
	expect(show(0.27, { ...single, before_m: 0.26 })).toBeCloseTo(0.26, 9);
	const other = holdBack();
	other(0.2, { before_m: 0.25, holes: 5, thinnest_m: 0.08 });
	expect(other(0.2, { before_m: 0.21, holes: 1, thinnest_m: 0.1 })).toBeCloseTo(0.09, 9);
	expect(other(0.22, { ...single, holes: 2 })).toBeCloseTo(0.21, 9);
});

test('what holes end of gaps in the weather comes back as a rise does', () => {
	const read = { before_m: 0.3, gaps_m: 0.1, holes: 1, thinnest_m: null };
	const show = holdBack();
	expect(show(0.3, null, 0.1)).toBeCloseTo(0.2, 9);
	expect(show(0.3, read, 0)).toBeCloseTo(0.2, 9);
	expect(show(0.32, null, 0)).toBeCloseTo(0.22, 9);
	expect(show(0.32, { ...read, before_m: 0.32, gaps_m: 0 }, 0)).toBeCloseTo(0.32, 9);
	expect(holdBack()(0.3, { ...read, holes: 5 }, 0)).toBeCloseTo(0.28, 9);
	const deep = holdBack();
	expect(deep(0.05, { ...read, before_m: 0.05 }, 0)).toBe(0);
	expect(deep(0.06, null, 0)).toBeCloseTo(0.01, 9);
});

test('no single hole raises what is shown by a thin one before it', () => {
	const metres = fc.double({ min: 0, max: 1, noNaN: true });
	fc.assert(
		fc.property(metres, metres, metres, (bound_m, thinnest_m, later_m) => {
			const show = holdBack();
			const capped_m = show(bound_m, { before_m: 1, holes: 3, thinnest_m });
			const after_m = show(later_m, { before_m: bound_m, holes: 1, thinnest_m: null });
			expect(after_m).toBeLessThanOrEqual(capped_m + 1e-12);
		})
	);
});

test('new ice after the old is gone starts without what was held back', () => {
	const show = holdBack();
	show(0.1, { before_m: 0.05, holes: 1, thinnest_m: null });
	expect([show(0, null), show(0.1, null)]).toEqual([0, 0.1]);
});

test('what is shown is never above the bound, nor raised by one hole', () => {
	const metres = fc.double({ min: 0, max: 1, noNaN: true });
	fc.assert(
		fc.property(metres, metres, fc.nat(6), (before_m, bound_m, holes) => {
			const shown = holdBack()(bound_m, { before_m, holes, thinnest_m: null });
			expect(shown).toBeLessThanOrEqual(bound_m);
			if (holes <= 1) expect(shown).toBeLessThanOrEqual(before_m + 1e-12);
		})
	);
});

test('a copy goes on with what was held back, apart from the first', () => {
	const show = holdBack();
	show(0.24, { before_m: 0.2, holes: 1, thinnest_m: null });
	const copy = show.copy();
	expect(show(0.25, { before_m: 0.25, holes: 3, thinnest_m: null })).toBe(0.25);
	expect(copy(0.26, null)).toBeCloseTo(0.22, 9);
});
