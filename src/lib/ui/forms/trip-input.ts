import type { FormInput } from './form-input.ts';

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
