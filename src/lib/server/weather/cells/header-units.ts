/** The unit that a heading states: a known one, one that we don't know, or none. */
export interface HeadingUnit {
	unit: string | null;
	unknown: string | null;
	/** The heading without its unit, in lower case, words apart. */
	name: string;
}

const SPELLINGS: readonly [RegExp, unit: string][] = [
	[/^(0[.,]1 ?°?c|1\/10 ?°?c|tenths? (of )?(a )?(°c|degrees? c(elsius)?|degc|c))$/, '0.1 °C'],
	[/^(°? ?c|deg\.? ?c|degrees? c(elsius)?|celsius|centigrade|grad c(elsius)?|degc)$/, '°C'],
	[/^(°? ?f|deg\.? ?f|degrees? f(ahrenheit)?|fahrenheit|degf)$/, '°F'],
	[/^(°? ?k|deg\.? ?k|kelvin)$/, 'K'],
	[/^(0[.,]1 ?mm|1\/10 ?mm|tenths? of (a )?mm)$/, '0.1 mm'],
	[/^(mm|millimet(er|re)s?|mm ?\/ ?(d|day)|kg ?\/ ?m(2|²)|kg m-2|l ?\/ ?m(2|²))$/, 'mm'],
	[/^mm ?(\/ ?(h|hr|hour)|h-1)$/, 'mm/h'],
	[/^(cm|centimet(er|re)s?)$/, 'cm'],
	[/^(in|inch|inches|″|"|in\.)$/, 'in'],
	[/^(m|met(er|re)s?)$/, 'm'],
	[/^(m ?\/ ?s|ms|m s-1|m ?\/ ?sec|mps)$/, 'm/s'],
	[/^(km ?\/ ?h|kmh|kph|kmph|km h-1|km ?\/ ?hr)$/, 'km/h'],
	[/^(mph|mp\/h|mi ?\/ ?h)$/, 'mph'],
	[/^(kn|kt|kts|knots?)$/, 'kn']
];

const LIKE_A_UNIT = /^(°|deg|mm|cm|in|inch|m|k|c|f|kg|km|l|tenths?|0[.,]1)\b[^a-z]*|^(mm|kg|cm|°)/;

/** @example headingUnit('Mean Temp (°C)') // => { unit: '°C', unknown: null, name: 'mean temp' } */
export function headingUnit(heading: string): HeadingUnit {
	const text = clean(heading);
	const bracket = /[([{]([^)\]}]{1,40})[)\]}]/.exec(text);
	const inside = bracket?.[1]?.trim() ?? '';
	const bracketUnit = knownUnit(inside);
	if (bracket && bracketUnit)
		return { unit: bracketUnit, unknown: null, name: words(without(text, bracket[0])) };
	if (bracket && LIKE_A_UNIT.test(inside)) {
		return { unit: null, unknown: inside, name: words(without(text, bracket[0])) };
	}
	return afterName(bracket ? without(text, bracket[0]) : text);
}

/** The unit that a text is, or `null`. @example knownUnit('degC') // => '°C' */
export function knownUnit(text: string): string | null {
	const cleaned = clean(text).toLowerCase();
	return SPELLINGS.find(([spelling]) => spelling.test(cleaned))?.[1] ?? null;
}

/** Heading texts with one sign for degrees; some encodings leave debris in its place. */
function clean(text: string): string {
	return text
		.replace(/Â°|[º˚\uFFFD]/g, '°')
		.replace(/^\uFEFF/, '')
		.replace(/^(#|\/\/)\s*/, '')
		.trim();
}

/** A unit in the last one to three words, `tmean_c`, `wind km/h`, `Temperature, deg C`. */
function afterName(text: string): HeadingUnit {
	const pieces = apart(text)
		.split(/[\s_,;:]+/)
		.filter((piece) => piece !== '');
	for (const count of [3, 2, 1]) {
		if (pieces.length <= count) continue;
		const unit = knownUnit(pieces.slice(-count).join(' '));
		if (unit) return { unit, unknown: null, name: words(pieces.slice(0, -count).join(' ')) };
	}
	return { unit: null, unknown: null, name: words(text) };
}

function without(text: string, piece: string): string {
	return text.replace(piece, ' ');
}

/** @example apart('airTempC') // => 'air Temp C' */
function apart(text: string): string {
	return text.replace(/([a-zà-ÿ])([A-Z])/g, '$1 $2');
}

function words(text: string): string {
	return apart(text)
		.toLowerCase()
		.normalize('NFKD')
		.replace(/\p{M}/gu, '')
		.replace(/[^a-z0-9°%]+/g, ' ')
		.trim();
}
