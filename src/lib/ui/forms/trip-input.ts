import { FormInput, type FormValues } from './form-input.ts';
import { mergeShown } from './merge-shown.ts';

/** What somebody typed on a trip sheet, and which of it is to be kept. */
export function readTrip(input: FormInput) {
	const long = (field: string, most: number): string | null => {
		const text = input.text(field)?.replace(/\s+/g, ' ') ?? null;
		if (text !== null && text.length > most)
			input.refuse(field, `Type ${most} letters at most: the sheet is one page.`);
		return text;
	};
	return {
		note: {
			emergency: long('emergency', 120),
			party: long('party', 300),
			back: long('back', 200),
			told: long('told', 300)
		},
		keepsParty: input.text('keepParty') === 'yes',
		keepsEmergency: input.text('keepEmergency') === 'yes'
	};
}

interface Note {
	emergency: string | null;
	party: string | null;
	back: string | null;
	told: string | null;
}

const PARTY = ['party', 'back', 'told'];

/** What is kept, as the fields of the form. */
export function noteValues(note: Note): FormValues {
	const texts = Object.entries(note).map(([name, text]) => [name, text ?? '']);
	return Object.fromEntries(texts);
}

/**
 * What is to be kept of a sheet: what was ticked. What is kept already and its page did not show, another
 * has kept since: a page that did not know of it forgets none of it, and writes over it when asked alone.
 */
export function noteToKeep(input: FormInput, stands: Note): Note {
	const { keepsParty, keepsEmergency } = readTrip(new FormInput({ ...input.values }));
	const isKept = (field: string) => (PARTY.includes(field) ? keepsParty : keepsEmergency);
	const nothing = Object.keys(stands).flatMap((field) => (isKept(field) ? [] : [[field, '']]));
	const wish = new FormInput({ ...input.values, ...Object.fromEntries(nothing) });
	mergeShown(wish, () => noteValues(stands));
	const { note } = readTrip(wish);
	for (const issue of wish.issues) {
		const field = issue.field as keyof Note;
		if (isKept(field)) input.issues.push(issue);
		else note[field] = stands[field];
	}
	return note;
}
