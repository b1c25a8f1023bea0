import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { lastDays, lastSpellFrom } from '#lib/model/leaving/last-days.ts';

const ON = '2027-03-10';
const daysOf = (chances: readonly (number | null)[], thaws: readonly number[] = []) =>
	chances.map((pThickness, index) => ({
		on: addDays(ON, index),
		pThickness,
		pThaw: thaws[index] ?? 0
	}));

test('the warm end comes before the middle', () => {
	const days = daysOf([1, 0.95, 0.9, 0.89, 0.6, 0.5, 0.4, 0]);
	expect(lastDays(days, ON, true)).toEqual({
		median: { kind: 'until', on: '2027-03-15' },
		warmEnd: { kind: 'until', on: '2027-03-12' }
	});
});

test('what is met on the last day told goes on beyond it', () => {
	expect(lastDays(daysOf([1, 1, 0.7]), ON, true)).toEqual({
		median: { kind: 'beyond', on: '2027-03-12' },
		warmEnd: { kind: 'until', on: '2027-03-11' }
	});
});

test('days before the day of asking count for nothing', () => {
	expect(lastDays(daysOf([1, 1, 0.2, 0.1]), '2027-03-12', true)).toEqual({
		median: { kind: 'never' },
		warmEnd: { kind: 'never' }
	});
});

test('ice that is still to grow is met until it falls again', () => {
	const { median } = lastDays(daysOf([0.1, 0.6, 0.7, 0.2]), ON, true);
	expect(median).toEqual({ kind: 'until', on: '2027-03-12' });
});

test('what is met again weeks after a fall is none to stay for', () => {
	const sunk = daysOf([1, 1, 0.95, 0.1, 0.05, 0.1, 0.6, 0.95, 0.95, 0.95, 0.4, 0.2, 0.1]);
	expect(lastDays(sunk, ON, true)).toEqual({
		median: { kind: 'until', on: '2027-03-12' },
		warmEnd: { kind: 'until', on: '2027-03-12' }
	});
	// Nor is it where the stretch before it is never likely.
	const doubtful = daysOf([0.6, 0.6, 0.6, 0.1, 0.1, 0.1, 0.95, 0.95, 0.95]);
	expect(lastDays(doubtful, ON, true)).toEqual({
		median: { kind: 'until', on: '2027-03-12' },
		warmEnd: { kind: 'never' }
	});
});

test('two days a little under do not end the warm end, one far under does', () => {
	const ends = (...low: number[]) => lastDays(daysOf([1, 1, ...low, 1, 1, 0.4]), ON, true).warmEnd;
	expect(ends(0.85, 0.88)).toEqual({ kind: 'until', on: '2027-03-15' });
	expect(ends(0.85, 0.3)).toEqual({ kind: 'until', on: '2027-03-11' });
});

test('no day is named on usual snow, nor where nothing is estimated', () => {
	const unknown = { median: { kind: 'unknown' }, warmEnd: { kind: 'unknown' } };
	expect(lastDays(daysOf([1, 0]), ON, false)).toEqual(unknown);
	expect(lastDays(daysOf([null, null]), ON, true)).toEqual(unknown);
});

const dayOf = (last: ReturnType<typeof lastDays>['median']) => ('on' in last ? last.on : '');

test('the warm end is never later than the middle', () => {
	fc.assert(
		fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true })), (chances) => {
			const { median, warmEnd } = lastDays(daysOf(chances), ON, true);
			expect(dayOf(warmEnd) <= dayOf(median)).toBe(true);
		})
	);
});

test('a warm spell that comes and goes is not the last', () => {
	const from = (thaws: number[]) =>
		lastSpellFrom(
			daysOf(
				thaws.map(() => 1),
				thaws
			),
			ON
		);
	expect(from([0, 0.8, 0.2, 0.1])).toBeNull();
	expect(from([0, 0.8, 0.2, 0.5, 0.9])).toBe('2027-03-13');
	expect(from([0.9, 0.9])).toBe(ON);
	expect(from([0.9])).toBeNull();
});
