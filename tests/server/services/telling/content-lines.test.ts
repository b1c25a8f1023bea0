import fc from 'fast-check';
import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import {
	contentLine,
	escaped
} from '../../../../src/lib/server/services/telling/calendar/content-lines.ts';

/** RFC 5545, 3.1: lines end in CR LF and have 75 octets at most without it. */
function octetsOfLines(text: string): number[] {
	expect(text.endsWith('\r\n')).toBe(true);
	return text
		.slice(0, -2)
		.split('\r\n')
		.map((line) => Buffer.byteLength(line));
}

test('a long line is folded by octets and not inside of a character', () => {
	const folded = contentLine('SUMMARY', '❄'.repeat(60));
	const octets = octetsOfLines(folded);
	expect(octets.length).toBeGreaterThan(2);
	expect(Math.max(...octets)).toBeLessThanOrEqual(75);
	expect(folded.replaceAll('\r\n ', '')).toBe(`SUMMARY:${'❄'.repeat(60)}\r\n`);
});

test('the example of RFC 5545, 3.3.11 is escaped as it stands there', () => {
	const text = 'Project XYZ Final Review\nConference Room - 3B\nCome Prepared.';
	expect(escaped(text)).toBe('Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.');
	expect(escaped('a;b,c\\d')).toBe('a\\;b\\,c\\\\d');
});

test('no text breaks out of its line', () => {
	const hostile = 'Bay\r\nEND:VEVENT\r\nBEGIN:VALARM\u0000\u0007\u2028;X="1":,\\';
	const line = contentLine('SUMMARY', escaped(hostile));
	expect(line.match(/\r\n(?! )/g)).toHaveLength(1);
	expect(line).not.toContain('\u0000');
});

test('whatever the text, a reader has it back, controls aside', () => {
	const text = fc.string({ unit: 'binary', maxLength: 300 });
	fc.assert(
		fc.property(text, (value) => {
			const event = ['BEGIN:VEVENT\r\n', contentLine('SUMMARY', escaped(value)), 'END:VEVENT\r\n'];
			const whole = event.join('');
			expect(Math.max(...octetsOfLines(whole))).toBeLessThanOrEqual(75);
			const read = new ICAL.Component(ICAL.parse(whole) as unknown[]).getFirstPropertyValue(
				'summary'
			);
			const kept = value
				.replace(/\r\n?/g, '\n')
				.replace(/[\p{Cc}\p{Cs}]/gu, (each) => (each === '\n' ? each : ''));
			expect(read).toBe(kept);
		}),
		{ numRuns: 300 }
	);
});
