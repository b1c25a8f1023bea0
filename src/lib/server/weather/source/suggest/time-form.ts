import type { JsonValue } from 'jsonpath-rfc9535';
import { dateShape, type DateShape } from '../../cells/dates.ts';
import { contradicts } from '../../csv/date-form.ts';
import { durationOf_s } from '../read/duration.ts';
import { textOf } from '../read/moments.ts';
import type { TimeForm } from '../schema.ts';

/** Seconds since 1970 of the years in which weather services have existed. */
const FIRST_EPOCH_s = Date.UTC(1940, 0, 1) / 1000;
const LAST_EPOCH_s = Date.UTC(2100, 0, 1) / 1000;

const LOOKED_AT = 200;

/** The form of values that are all times, or `null` where some are not. */
export function timeFormOf(values: readonly JsonValue[]): TimeForm | null {
	const texts = values
		.slice(0, LOOKED_AT)
		.filter((value) => value !== null)
		.map(textOf);
	const [first] = texts;
	if (first === undefined) return null;
	if (texts.every(isInterval)) return 'interval';
	const shape = dateShape(first);
	if (shape === null || !texts.every((text) => dateShape(text) === shape)) return null;
	if (shape === 'numeric') return dayOrder(texts);
	return shape.startsWith('epoch') && !texts.every(isOfOurTime) ? null : FORM[shape];
}

const FORM: Readonly<Record<Exclude<DateShape, 'numeric'>, TimeForm>> = {
	'Y-m-d': 'iso',
	Ymd: 'Ymd',
	'd mon Y': 'd mon Y',
	'mon d Y': 'mon d Y',
	'epoch s': 'epoch_s',
	'epoch ms': 'epoch_ms'
};

/** Day before month unless the numbers say otherwise: with a month first, some day would be over 12. */
function dayOrder(texts: readonly string[]): TimeForm {
	return texts.some((text) => contradicts(text, 'd/m/Y')) ? 'm/d/Y' : 'd/m/Y';
}

function isInterval(text: string): boolean {
	const [from = '', until = '', ...more] = text.split('/');
	return (
		more.length === 0 &&
		dateShape(from) === 'Y-m-d' &&
		(durationOf_s(until) !== null || dateShape(until) === 'Y-m-d')
	);
}

function isOfOurTime(text: string): boolean {
	const at = Number(text);
	const at_s = Math.abs(at) > 1e11 ? at / 1000 : at;
	return at_s > FIRST_EPOCH_s && at_s < LAST_EPOCH_s && Math.abs(at_s) > 1e8;
}
