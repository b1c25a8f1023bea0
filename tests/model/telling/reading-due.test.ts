import { expect, test } from 'vitest';
import { readingDueOn, type ReadingDueInput } from '#lib/model/telling/reading-due.ts';
import { reading } from '../../support/invented-winter.ts';

function due(change: Partial<ReadingDueInput> = {}) {
	return readingDueOn({
		readings: [reading('2027-01-02', [0.3]), reading('2026-12-20', [0.2])],
		expectedFrom: '2026-12-15',
		isWithheld: false,
		after_d: 7,
		today: '2027-01-05',
		...change
	});
}

test('a reading is due so many days after the last, in whichever order they are', () => {
	expect(due()).toBe('2027-01-09');
});

test('what somebody else told, and a place that broke, put nothing off', () => {
	const others = [
		reading('2027-01-02', [0.3]),
		reading('2027-01-04', [0.3], { secondHand: true }),
		reading('2027-01-05', [], { kind: 'wentThrough' })
	];
	expect(due({ readings: others })).toBe('2027-01-09');
	expect(due({ readings: [reading('2027-01-04', [0.3], { kind: 'atLeast' })] })).toBe('2027-01-11');
});

test('before anybody has drilled, none is due until a load has been expected for so long', () => {
	const readings: ReadingDueInput['readings'] = [];
	expect(due({ readings })).toBe('2026-12-22');
	expect(due({ readings, expectedFrom: '2027-01-20' })).toBeNull();
	expect(due({ readings, expectedFrom: null })).toBeNull();
});

test('nobody is asked onto ice that a status is withheld for', () => {
	expect(due({ isWithheld: true })).toBeNull();
});
