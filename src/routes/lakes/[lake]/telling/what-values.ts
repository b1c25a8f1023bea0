import type { TellingRecord } from '#lib/server/services/telling/settings.ts';
import type { FormValues } from '#lib/ui/forms/form-input.ts';
import { KIND_BOX, LOAD_BOX, SITE_BOX } from './boxes.ts';

type What = Pick<TellingRecord, 'sites' | 'loads' | 'readingAfter_d' | 'units'>;

/** What is told, as its form shows it. */
export function whatValues({ sites, loads, readingAfter_d, units }: What): FormValues {
	return {
		...ticked(SITE_BOX, sites),
		...ticked(LOAD_BOX, loads),
		readingAfter_d: String(readingAfter_d),
		...units
	};
}

/** The kinds that are sent, as their form shows them. */
export function kindValues(kinds: readonly string[]): FormValues {
	return ticked(KIND_BOX, kinds);
}

function ticked(box: string, ids: readonly string[]): FormValues {
	return Object.fromEntries(ids.map((id) => [`${box}${id}`, 'yes']));
}
