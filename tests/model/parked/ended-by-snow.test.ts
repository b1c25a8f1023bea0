import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { isEndedBySnow } from '#lib/model/parked/ended-by-snow.ts';

const AS_OF = '2027-02-01';

const days = (...chances: number[]) =>
	chances.map((pThickness, i) => ({ on: addDays(AS_OF, i), pThickness, pThaw: 0 }));

test('days end by snow where without it the requirement would still be met', () => {
	const sinking = days(1, 0.95, 0.2, 0.1, 0.1, 0.1);
	expect(isEndedBySnow(sinking, days(1, 1, 0.98, 1, 1, 1), AS_OF)).toBe(true);
	expect(isEndedBySnow(sinking, days(1, 1, 0.6, 0.2, 0.1, 0.1), AS_OF)).toBe(false);
});

test('what the snow sinks today has no day left by the snow', () => {
	const sunk = days(0.1, 0.1, 0.1, 0.1);
	expect(isEndedBySnow(sunk, days(1, 1, 1, 1), AS_OF)).toBe(true);
	expect(isEndedBySnow(sunk, days(0.2, 0.2, 0.2, 0.2), AS_OF)).toBe(false);
});

test('nothing is ended that goes on to the last day told, nor before the day of asking', () => {
	const on = days(1, 1, 1, 1);
	expect(isEndedBySnow(on, on, AS_OF)).toBe(false);
	const later = days(0.1, 0.1, 0.1, 1, 1, 1);
	expect(isEndedBySnow(later, days(1, 1, 1, 1, 1, 1), addDays(AS_OF, 3))).toBe(false);
	expect(isEndedBySnow([], [], AS_OF)).toBe(false);
});
