/** Text as XML 1.0 may hold it, between tags or inside quotes: what it may not hold at all is left out. */
function xmlText(text: string): string {
	return text
		.replace(/[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu, '')
		.replaceAll('&', '&amp;')
		.replaceAll('<', '&lt;')
		.replaceAll('>', '&gt;')
		.replaceAll('"', '&quot;')
		.replaceAll("'", '&apos;')
		.replaceAll('\r', '&#13;');
}

/** An element with text in it. @example element('title', 'A & B') // => '<title>A &amp; B</title>' */
export function element(
	name: string,
	text: string,
	attributes: Readonly<Record<string, string>> = {}
): string {
	return `<${name}${written(attributes)}>${xmlText(text)}</${name}>`;
}

export function emptyElement(name: string, attributes: Readonly<Record<string, string>>): string {
	return `<${name}${written(attributes)}/>`;
}

function written(attributes: Readonly<Record<string, string>>): string {
	return Object.entries(attributes)
		.map(([name, value]) => ` ${name}="${xmlText(value)}"`)
		.join('');
}
