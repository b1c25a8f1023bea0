import type { FormValues } from '#lib/ui/forms/form-input.ts';

/** Before the id of a load in the name of its box. */
export const SHOWN_BOX = 'shown.';

/** The loads that are ticked, each as a box of its own. */
export function shownValues(ids: readonly string[]): FormValues {
	return Object.fromEntries(ids.map((id) => [`${SHOWN_BOX}${id}`, 'yes']));
}
