import type { FormInput } from '#lib/ui/forms/form-input.ts';

/** A site as its form gives it, still to pass the schema of the service. */
export function readSite(input: FormInput) {
	const kind = input.text('siteKind') ?? '';
	return {
		name: input.required('name', 'Give it a name, as people there call it.'),
		kind,
		// The list of sites stands in the form whatever the kind is.
		parent: kind === 'track' ? input.text('parent') : null
	};
}

/** Puts what speaks against a site beside the fields of its form. */
export function refuseSite(
	input: FormInput,
	issues: readonly { field: string; message: string }[]
): void {
	for (const { field, message } of issues) {
		input.refuse(field === 'kind' ? 'siteKind' : field, message);
	}
}
