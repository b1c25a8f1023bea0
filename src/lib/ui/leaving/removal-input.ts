import type { IsoDate } from '#lib/model/calendar.ts';
import type { FormInput, FormValues } from '../forms/form-input.ts';
import { readTypedNumber } from '../forms/typed-number.ts';

/** Before the load's id in the name of its field. */
export const LEAD = 'lead.';

export interface TypedRemoval {
	removalOn: IsoDate | null;
	leads: { load: string; lead_d: number }[];
}

/** What is stored as its form shows it. */
export function removalValues(
	removalOn: IsoDate | null,
	leads: readonly { id: string; lead_d: number | null }[]
): FormValues {
	const days = leads.map(({ id, lead_d }) => [
		`${LEAD}${id}`,
		lead_d === null ? '' : String(lead_d)
	]);
	return { removalOn: removalOn ?? '', ...Object.fromEntries(days) };
}

/** The removal date and the days of lead, of which an empty field has none typed. */
export function readRemoval(input: FormInput, loads: ReadonlySet<string>): TypedRemoval {
	const leads = [...loads].flatMap((load) => {
		const field = `${LEAD}${load}`;
		const { value, problem } = readTypedNumber(input.text(field) ?? '');
		if (problem !== null) input.refuse(field, problem);
		return value === null ? [] : [{ load, lead_d: value }];
	});
	return { removalOn: input.day('removalOn'), leads };
}
