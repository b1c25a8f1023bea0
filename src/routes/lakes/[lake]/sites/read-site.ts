import type { SiteKind } from '#lib/model/site-kind.ts';
import type { FormInput, FormValues } from '#lib/ui/forms/form-input.ts';
import type { Together } from '#lib/ui/forms/merge-shown.ts';
import { kindWords } from '#lib/ui/sites-words.ts';

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

interface Site {
	name: string;
	kind: SiteKind;
	parent: string | null;
}

/** A stored site as its form shows it. */
export function siteValues({ name, kind, parent }: Site): FormValues {
	return { name, siteKind: kind, ...(parent === null ? {} : { parent }) };
}

/** The list of sites stands in the form whatever the kind is, and counts for a track alone. */
export function withoutIdleParent(values: FormValues): FormValues {
	const { parent, ...rest } = values;
	return rest['siteKind'] === 'track' && parent !== undefined ? { ...rest, parent } : rest;
}

/** What it is, with the site that a track is made on. */
export function kindTogether(sites: readonly { id: string; name: string }[]): Together {
	return {
		has: (field) => field === 'siteKind' || field === 'parent',
		at: 'siteKind',
		said: ({ siteKind, parent }) =>
			kindWords(siteKind as SiteKind, sites.find(({ id }) => id === parent)?.name ?? null)
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
