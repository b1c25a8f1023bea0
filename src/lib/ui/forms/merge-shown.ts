import { isIsoDate } from '#lib/model/calendar.ts';
import { day } from '../format/day.ts';
import { withUnits, DEFAULT_UNITS, type Units } from '../units-setting.ts';
import type { FormInput, FormValues } from './form-input.ts';
import { unitLabelOf } from './quantity.ts';

/** The hidden field of a form that changes something stored: what its page showed. */
export const SHOWN = 'shownThen';

/** What a form showed, by the names of its fields; a box without a tick has none. */
export interface Shown {
	units: Units;
	values: FormValues;
}

/** Fields that mean nothing without each other: they are taken from one side or the other, all of them. */
export interface Together {
	has: (field: string) => boolean;
	/** Where it is asked which of both counts; without, at each field that differs. */
	at?: string;
	/** What stands, in words. */
	said?: (stands: FormValues) => string;
}

interface Rules {
	together?: readonly Together[];
	/** What a value of a field is called where somebody is told of it. */
	words?: (field: string, text: string) => string;
}

/**
 * Lays what was typed over what stands by now, as the form would show it: a field that was left as its page
 * showed it takes what another has stored since, and where both have changed it, it is asked which of
 * them counts. A form that does not tell what it showed is taken as it is.
 */
export function mergeShown(
	input: FormInput,
	stand: (units: Units) => FormValues,
	{ together = [], words = plainWords }: Rules = {}
): void {
	const shown = readShown(input.values[SHOWN]);
	if (shown === null) return;
	const stands = stand(shown.units);
	const { [SHOWN]: _, ...typed } = input.values;
	const fields = new Set([...Object.keys(shown.values), ...Object.keys(stands)]);
	const alone = [...fields].filter((field) => !together.some(({ has }) => has(field)));
	const groups = [
		...alone.map((field): Together => ({ has: (name) => name === field })),
		...together
	];
	for (const group of groups) {
		const names = [...new Set([...fields, ...Object.keys(typed)])].filter(group.has);
		const differing = (one: FormValues, other: FormValues) =>
			names.filter((name) => bare(one[name]) !== bare(other[name]));
		if (names.every((name) => (stands[name] ?? '') === (shown.values[name] ?? ''))) continue;
		const unlike = differing(typed, stands);
		if (differing(typed, shown.values).length === 0) takeOver(input, names, stands);
		else if (unlike.length > 0)
			for (const field of group.at === undefined ? unlike : [group.at])
				askWhich(input, field, group.said?.(stands) ?? words(field, stands[field] ?? ''));
	}
}

/** Browsers send the ends of lines in another way than they were given, or leave them out. */
function bare(text = ''): string {
	return text.replace(/\s+/g, '');
}

function takeOver(input: FormInput, names: readonly string[], stands: FormValues): void {
	for (const name of names) {
		const text = stands[name];
		if (text === undefined) delete input.values[name];
		else input.values[name] = text;
	}
}

function askWhich(input: FormInput, field: string, said: string): void {
	const now = said === '' ? 'empty' : said;
	input.ask(
		field,
		`Somebody has changed this since the page was opened: now it is ${now}. Type that, or keep yours.`,
		'Mine is right'
	);
}

/** A value with its unit, or a day as pages tell it. */
export function plainWords(field: string, text: string): string {
	if (isIsoDate(text)) return day(text);
	const unit = unitLabelOf(field);
	return text === '' || unit === null ? text : `${text} ${unit}`;
}

/** `null` where nothing that a page of ours would send is there. */
function readShown(text: string | undefined): Shown | null {
	try {
		const { units, values } = Object(JSON.parse(text ?? 'null'));
		if (typeof values !== 'object' || values === null) return null;
		const texts = Object.entries(values).map(([name, value]) => [name, String(value)]);
		return { units: withUnits(DEFAULT_UNITS, Object(units)), values: Object.fromEntries(texts) };
	} catch {
		return null;
	}
}
