import { readClock } from './clock.ts';
import { monthOf } from './months.ts';
import { inQuotes } from './quote.ts';

export const DATE_FORMS = [
	'Y-m-d',
	'd/m/Y',
	'm/d/Y',
	'Ymd',
	'd mon Y',
	'mon d Y',
	'epoch s',
	'epoch ms'
] as const;
export type DateForm = (typeof DATE_FORMS)[number];

/** What a text looks like; `numeric` is day and month in either order. */
export type DateShape = Exclude<DateForm, 'd/m/Y' | 'm/d/Y'> | 'numeric';

/** A point of the record's own calendar. Nothing here is converted to another time zone. */
export interface Stamp {
	/** Whole days since 1970-01-01. */
	day: number;
	/** Since midnight, up to 86,400; `null` where only the day is given. */
	second: number | null;
	offset_s: number | null;
}

const S_PER_DAY = 86_400;
const LONGEST = 48;
const FIRST_YEAR = 1700;
const LAST_YEAR = 2100;
const TAIL = String.raw`(?:(?:[T,]\s*|\s+)(\S.*))?$`;

const SHAPES: Readonly<Record<DateShape, RegExp>> = {
	'Y-m-d': new RegExp(String.raw`^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})${TAIL}`, 'i'),
	numeric: new RegExp(String.raw`^(\d{1,2})([-/.])\s?(\d{1,2})\2\s?(\d{4})${TAIL}`, 'i'),
	// Of the last two centuries where a time follows, lest seconds since 1970 look like it.
	Ymd: /^((?:1[7-9]|20)\d{2})(0[1-9]|1[0-2])(0[1-9]|[12]\d|3[01])(?:(?:[T :_]|(?<=^(?:19|20)\d{6}))(\d{2}(?:\d{2}){0,2})(Z?))?$/,
	'd mon Y': new RegExp(
		String.raw`^(?:[a-z]{2,9}[.,]?\s+)?(\d{1,2})(?:\.|st|nd|rd|th)?[-\s/]?\s?([a-zä]{3,9})\.?[-\s/,]\s?(\d{4})${TAIL}`,
		'i'
	),
	'mon d Y': new RegExp(
		String.raw`^(?:[a-z]{2,9}[.,]?\s+)?([a-zä]{3,9})\.?[-\s](\d{1,2})(?:st|nd|rd|th)?(?:,\s?|[-\s])(\d{4})${TAIL}`,
		'i'
	),
	'epoch s': /^-?\d{9,10}(?:\.\d{1,9})?$/,
	'epoch ms': /^-?\d{12,13}$/
};

/** The shape of a text that may be a date, or `null`. */
export function dateShape(text: string): DateShape | null {
	if (text.length < 8 || text.length > LONGEST) return null;
	for (const shape of Object.keys(SHAPES) as DateShape[]) {
		const match = SHAPES[shape].exec(text);
		if (match && hasMonth(shape, match)) return shape;
	}
	return null;
}

/** The two leading numbers of a text of the shape `numeric`. */
export function leadingNumbers(text: string): [first: number, second: number] | null {
	const match = SHAPES.numeric.exec(text);
	return match ? [Number(match[1]), Number(match[3])] : null;
}

/** A date, with its time of day where one stands behind it; else the reason why not. */
export function readStamp(text: string, form: DateForm): Stamp | string {
	const shape = form === 'd/m/Y' || form === 'm/d/Y' ? 'numeric' : form;
	const match = text.length > LONGEST ? null : SHAPES[shape].exec(text);
	if (!match || !hasMonth(shape, match)) return notOfForm(text, form);
	if (form === 'epoch s' || form === 'epoch ms') return ofEpoch(text, form);
	const [year, month, date, tail] = parts(match, form);
	const day = dayOf(year, month, date);
	if (typeof day === 'string') return `${inQuotes(text)}: ${day}`;
	if (!tail) return { day, second: null, offset_s: null };
	const clock = readClock(form === 'Ymd' ? compactClock(tail, match[5]) : tail);
	return typeof clock === 'string' ? `${inQuotes(text)}: ${clock}` : { day, ...clock };
}

function parts(
	match: RegExpExecArray,
	form: Exclude<DateForm, 'epoch s' | 'epoch ms'>
): [year: number, month: number, day: number, tail: string | undefined] {
	const [, a = '', b = '', c = '', d = ''] = match;
	switch (form) {
		case 'Y-m-d':
			return [Number(a), Number(c), Number(d), match[5]];
		case 'd/m/Y':
			return [Number(d), Number(c), Number(a), match[5]];
		case 'm/d/Y':
			return [Number(d), Number(a), Number(c), match[5]];
		case 'Ymd':
			return [Number(a), Number(b), Number(c), match[4]];
		case 'd mon Y':
			return [Number(c), monthOf(b) ?? 0, Number(a), match[4]];
		case 'mon d Y':
			return [Number(c), monthOf(a) ?? 0, Number(b), match[4]];
	}
}

function hasMonth(shape: DateShape, match: RegExpExecArray): boolean {
	if (shape === 'd mon Y') return monthOf(match[2] ?? '') !== null;
	return shape !== 'mon d Y' || monthOf(match[1] ?? '') !== null;
}

/** @example compactClock('1330', 'Z') // => '13:30Z' */
function compactClock(digits: string, zone: string | undefined): string {
	const [hours = '', minutes = '00', seconds = '00'] = digits.match(/../g) ?? [];
	return `${hours}:${minutes}:${seconds}${zone ?? ''}`;
}

function ofEpoch(text: string, form: 'epoch s' | 'epoch ms'): Stamp | string {
	const at_s = Math.floor(form === 'epoch s' ? Number(text) : Number(text) / 1000);
	const day = Math.floor(at_s / S_PER_DAY);
	const year = new Date(at_s * 1000).getUTCFullYear();
	if (year < FIRST_YEAR || year > LAST_YEAR) return `${inQuotes(text)}: ${outOfYears(year)}`;
	return { day, second: at_s - day * S_PER_DAY, offset_s: 0 };
}

function dayOf(year: number, month: number, date: number): number | string {
	if (year < FIRST_YEAR || year > LAST_YEAR) return outOfYears(year);
	const at = new Date(Date.UTC(year, month - 1, date));
	return at.getUTCMonth() === month - 1 && at.getUTCDate() === date
		? at.getTime() / 1000 / S_PER_DAY
		: 'there is no such day in the calendar; correct the date';
}

function outOfYears(year: number): string {
	return `the year ${year} is outside ${FIRST_YEAR} to ${LAST_YEAR}; correct the date`;
}

function notOfForm(text: string, form: DateForm): string {
	if (text === '') return 'the date is missing; fill it in or remove the line';
	return `${inQuotes(text)} is not a date written as ${form}, as the other lines are; write it so or remove the line`;
}
