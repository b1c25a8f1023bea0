import { expect, test } from 'vitest';
import { METRIC_WORDS, counted, wordsFor } from '#lib/model/words.ts';

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

test('inches are told by halves, feet by fives, both to the cautious side', () => {
	const words = wordsFor({ measure: 'imperial', mass: 'lb' });
	expect(words.thickness(0.1524)).toBe('6 in');
	expect(words.thickness(0.151)).toBe('5.5 in');
	expect(words.requirement(0.153)).toBe('6.5 in');
	expect(words.thickness(0.01)).toBe('under 0.5 in');
	expect(words.distance(15)).toBe('50 ft');
	expect(words.mass(2000)).toBe('4,409 lb');
	expect(words.step(20)).toBe('36 °F');
	expect(words.degreeDays(100)).toBe('180 °F·d');
});
