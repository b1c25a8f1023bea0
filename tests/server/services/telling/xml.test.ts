import { XMLParser, XMLValidator } from 'fast-xml-parser';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { element, emptyElement } from '../../../../src/lib/server/services/telling/atom/xml.ts';

const parser = new XMLParser({
	ignoreAttributes: false,
	attributeNamePrefix: '',
	trimValues: false,
	parseTagValue: false,
	parseAttributeValue: false,
	htmlEntities: true
});

/** Char of XML 1.0, 2.2. */
const NO_CHAR = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu;

test('no text breaks out of its element or its attribute', () => {
	const hostile = '</title><script>alert(1)</script> & "a" \'b\' ]]> <!-- \u0000\uFFFF\uD800';
	const xml = `<feed>${element('title', hostile)}${emptyElement('link', { href: hostile })}</feed>`;
	expect(XMLValidator.validate(xml)).toBe(true);
	expect(parser.parse(xml)).toEqual({
		feed: {
			title: '</title><script>alert(1)</script> & "a" \'b\' ]]> <!-- ',
			link: { href: '</title><script>alert(1)</script> & "a" \'b\' ]]> <!-- ' }
		}
	});
});

test('whatever the text, the document is well formed and has it, as far as XML can', () => {
	fc.assert(
		fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
			const xml = `<a>${element('b', `x${text}x`)}</a>`;
			expect(XMLValidator.validate(xml)).toBe(true);
			const read = (parser.parse(xml) as { a: { b: string } }).a.b;
			expect(read).toBe(`x${text.replace(NO_CHAR, '')}x`);
		}),
		{ numRuns: 300 }
	);
});
