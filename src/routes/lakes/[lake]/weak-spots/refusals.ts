import { fail } from '@sveltejs/kit';
import type { StoredRoute } from '#lib/server/services/places/routes.ts';
import type { StoredSpot } from '#lib/server/services/places/weak-spots.ts';
import type { FormInput } from '#lib/ui/forms/form-input.ts';

/** A weak spot that could not be stored, beside its field. */
export function refuseSpot(input: FormInput, stored: Exclude<StoredSpot, { status: 'stored' }>) {
	const reason =
		stored.status === 'nameTaken'
			? `“${stored.name}” is on the list already. Choose another name: readings find their place by it.`
			: 'The list is full. Take something off it first.';
	input.refuse('name', reason);
	return fail(400, input.refusal);
}

/** The same for a route. */
export function refuseRoute(input: FormInput, stored: Exclude<StoredRoute, { status: 'stored' }>) {
	if (stored.status === 'noSuchSpot')
		input.refuse('name', `Point ${stored.point + 1} is no longer on the list of weak spots.`);
	else input.refuse('name', 'There are as many routes as the lake can have. Delete one first.');
	return fail(400, input.refusal);
}
