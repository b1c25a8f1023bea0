import { expect, test } from 'vitest';
import { climateMark, climateName, climateSentence } from '#lib/ui/climate-words.ts';

test('past winters are named as such, and what is assumed as an assumption', () => {
	expect(climateName({ pastWinters: 4, hasUsual: false, endsEarly: false })).toBe('past winters');
	expect(climateName({ pastWinters: 1, hasUsual: true, endsEarly: false })).toBe(
		'past winters and usual climate'
	);
	expect(climateName({ pastWinters: 0, hasUsual: true, endsEarly: false })).toBe('usual climate');
	expect(climateSentence({ pastWinters: 4, hasUsual: false, endsEarly: false })).toContain(
		'4 earlier winters'
	);
	expect(climateSentence({ pastWinters: 4, hasUsual: false, endsEarly: true })).toContain(
		'by the usual climate of such a place where their records end'
	);
	for (const pastWinters of [0, 1, 2]) {
		expect(climateSentence({ pastWinters, hasUsual: true, endsEarly: false })).toContain(
			'the usual climate of such a place stands in for days to come: an assumption'
		);
	}
	expect(climateSentence({ pastWinters: 1, hasUsual: true, endsEarly: false })).toMatch(
		/^Only one earlier winter’s/
	);
});

test('where nothing is told past what is known nothing is said', () => {
	expect(climateSentence(null)).toBeNull();
});

test('a mark in a picture names the assumption where one stands in', () => {
	expect(climateMark({ pastWinters: 4, hasUsual: false, endsEarly: false })).toBe('past winters');
	expect(climateMark({ pastWinters: 1, hasUsual: true, endsEarly: false })).toBe('usual climate');
	expect(climateMark(null)).toBe('past winters');
});
