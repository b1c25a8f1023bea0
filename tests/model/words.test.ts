import { expect, test } from 'vitest';
import { METRIC_WORDS, counted } from '#lib/model/words.ts';

test('ice is rounded down, what is asked for is rounded up', () => {
	expect(METRIC_WORDS.thickness(0.159)).toBe('15 cm');
	expect(METRIC_WORDS.requirement(0.151)).toBe('16 cm');
	expect(METRIC_WORDS.thickness(0.29)).toBe('29 cm');
	expect(METRIC_WORDS.requirement(0.15)).toBe('15 cm');
});

test('days are written as in a diary', () => {
	expect(METRIC_WORDS.day('2027-03-05')).toBe('5 Mar');
});

test('one of a thing is not many', () => {
	expect(counted(1, 'hole')).toBe('1 hole');
	expect(counted(2, 'hole')).toBe('2 holes');
});
