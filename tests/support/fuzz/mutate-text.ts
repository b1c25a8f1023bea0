import fc from 'fast-check';

/** What readers of tables, dates, numbers and marked-up text stumble over. */
const ODD_PIECES = [
	'',
	'NaN',
	'Infinity',
	'1e999',
	'-1e-400',
	'-0',
	'9'.repeat(400),
	'0x10',
	'null',
	'undefined',
	'true',
	'-999',
	'-9999.0',
	'1.234,5',
	'1 234',
	'−5',
	'٣',
	'"',
	'""',
	'"a',
	"'",
	'=1+1',
	'@SUM(A1)',
	'\0',
	'\ufeff',
	'\u202e',
	'\u2028',
	'\ud800',
	'𝕏',
	'é̀',
	'__proto__',
	'constructor',
	'<x>',
	'</gpx>',
	'<![CDATA[',
	']]>',
	'&lol;',
	'&#0;',
	'&#x110000;',
	'<!DOCTYPE gpx [<!ENTITY a "b">]>',
	'<?xml version="1.0"?>',
	'../',
	'2026-02-30',
	'2026-01-01T24:00:00Z',
	'1970-01-01T00:00:00+99:99',
	'9999-12-31',
	'-271821-04-20',
	'0000-00-00',
	'29.02.2025',
	'02:30',
	'1e15',
	'86400000000000000',
	'x'.repeat(3000),
	'[',
	'{',
	']}',
	'\\u0000',
	'\\'
];

const LONGEST = 100_000;

type Edit = (text: string) => string;

const place = fc.double({ min: 0, max: 0.999_999, noNaN: true });

/** One change of a text that keeps most of it as it is. */
const edit: fc.Arbitrary<Edit> = fc.oneof(
	{
		weight: 8,
		arbitrary: fc.tuple(place, fc.constantFrom(...ODD_PIECES)).map(
			([at, piece]): Edit =>
				(text) =>
					replaceToken(text, at, piece)
		)
	},
	{
		weight: 2,
		arbitrary: fc.tuple(place, fc.constantFrom(...ODD_PIECES)).map(
			([at, piece]): Edit =>
				(text) =>
					cut(text, at, 0, piece)
		)
	},
	{
		weight: 2,
		arbitrary: fc.tuple(place, fc.string({ maxLength: 20, unit: 'binary' })).map(
			([at, piece]): Edit =>
				(text) =>
					cut(text, at, piece.length, piece)
		)
	},
	fc.tuple(place, fc.nat(200)).map(
		([at, length]): Edit =>
			(text) =>
				cut(text, at, length, '')
	),
	place.map(
		(at): Edit =>
			(text) =>
				text.slice(0, at * text.length)
	),
	fc.tuple(place, fc.integer({ min: 2, max: 300 })).map(
		([at, times]): Edit =>
			(text) =>
				repeatLine(text, at, times)
	),
	fc.tuple(place, place).map(
		([one, other]): Edit =>
			(text) =>
				swapLines(text, one, other)
	),
	fc
		.tuple(
			fc.constantFrom(',', ';', '\t', '.', '"', '<', '\n', ':'),
			fc.constantFrom(...',;\t.| \r')
		)
		.map(
			([from, to]): Edit =>
				(text) =>
					text.replaceAll(from, to)
		)
);

/** A text as it is, or changed in a few places. */
export function mutated(text: fc.Arbitrary<string>): fc.Arbitrary<string> {
	return fc
		.tuple(text, fc.array(edit, { maxLength: 6 }))
		.map(([from, edits]) => edits.reduce((now, change) => change(now).slice(0, LONGEST), from));
}

function replaceToken(text: string, at: number, piece: string): string {
	const parts = text.split(/([\s,;<>"'=:{}[\]]+)/);
	const index = Math.floor((at * parts.length) / 2) * 2;
	return parts.with(Math.min(index, parts.length - 1), piece).join('');
}

function cut(text: string, at: number, length: number, piece: string): string {
	const start = Math.floor(at * text.length);
	return text.slice(0, start) + piece + text.slice(start + length);
}

function repeatLine(text: string, at: number, times: number): string {
	const lines = text.split('\n');
	const index = Math.floor(at * lines.length);
	const line = lines[index] ?? '';
	const most = Math.min(times, Math.ceil(LONGEST / (line.length + 1)));
	return lines.toSpliced(index, 0, ...Array.from({ length: most }, () => line)).join('\n');
}

function swapLines(text: string, one: number, other: number): string {
	const lines = text.split('\n');
	const [a, b] = [one, other].map((at) => Math.floor(at * lines.length)) as [number, number];
	return lines
		.with(a, lines[b] ?? '')
		.with(b, lines[a] ?? '')
		.join('\n');
}
