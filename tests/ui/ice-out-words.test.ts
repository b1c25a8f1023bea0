import { expect, test } from 'vitest';
import { iceOutSentence } from '#lib/ui/ice-out-words.ts';

const WINDOW = { p10: '2027-04-08', p50: '2027-04-17', p90: '2027-04-28' };
const TO = '2027-05-10';

test('ice-out is a window of eight cases of ten', () => {
	expect(iceOutSentence(WINDOW, TO)).toBe(
		'Ice-out: as likely before 17 Apr as after, and in eight cases of ten between 8 Apr and 28 Apr.'
	);
});

test('what lies past the last day is told so, part by part', () => {
	expect(iceOutSentence({ ...WINDOW, p90: null }, TO)).toBe(
		'Ice-out: as likely before 17 Apr as after; in one case of ten by 8 Apr, in more than one not by 10 May.'
	);
	expect(iceOutSentence({ ...WINDOW, p50: null, p90: null }, TO)).toContain(
		'Ice-out: more likely than not later than 10 May; in one case of ten by 8 Apr'
	);
	const late = 'Ice-out: in nine cases of ten not by 10 May.';
	expect(iceOutSentence({ p10: null, p50: null, p90: null }, TO)).toBe(late);
	expect(iceOutSentence(null, TO)).toBe(late);
});
