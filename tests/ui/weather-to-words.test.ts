import { expect, test } from 'vitest';
import { weatherToWords } from '#lib/ui/weather-to-words.ts';

test.each([
	['2027-01-20', '14:00', 'to 14:00 today'],
	['2027-01-19', '18:00', 'to 18:00 on 19 Jan, yesterday'],
	['2027-01-20', '00:00', 'to the end of 19 Jan, yesterday'],
	['2027-01-21', '00:00', 'to the end of today'],
	['2027-01-11', '00:00', 'to the end of 10 Jan, 10 days ago']
])('weather to %s %s is told as “%s”', (on, clock, words) => {
	expect(weatherToWords({ on, clock }, '2027-01-20')).toBe(words);
});
