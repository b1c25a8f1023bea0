import type { SiteKind } from '#lib/model/site-kind.ts';

/** Something to mend before a site can be stored, and at which of its fields. */
export interface SiteIssue {
	field: 'name' | 'kind' | 'parent' | '';
	message: string;
}

interface Site {
	id: string;
	name: string;
	kind: SiteKind;
	parent: string | null;
}

/** What speaks against a site among a lake's others; one without an id is new. */
export function whyNotStored(
	sites: readonly Site[],
	site: Omit<Site, 'id'> & { id?: string }
): SiteIssue[] {
	const others = sites.filter(({ id }) => id !== site.id);
	const plain = (text: string) => text.trim().toLowerCase();
	const issues: SiteIssue[] = [];
	if (others.some(({ name }) => plain(name) === plain(site.name))) {
		issues.push({
			field: 'name',
			message: `There is a site “${site.name}” already: name it otherwise.`
		});
	}
	return [...issues, ...whyNotOfKind(others, site)];
}

function whyNotOfKind(
	others: readonly Site[],
	{ id, kind, parent }: Omit<Site, 'id'> & { id?: string }
): SiteIssue[] {
	if (kind !== 'track') {
		return parent === null
			? []
			: [
					{
						field: 'parent',
						message: 'Only a track is made on another site’s ice: leave it empty.'
					}
				];
	}
	const onIt = others.filter((site) => site.parent === id);
	if (id !== undefined && onIt.length > 0) {
		return [
			{ field: 'kind', message: `${named(onIt)} was made on its ice, so it cannot be a track.` }
		];
	}
	const from = others.find((site) => site.id === parent);
	if (!from) return [{ field: 'parent', message: 'Say on which site’s ice the track was made.' }];
	return from.kind === 'track'
		? [
				{
					field: 'parent',
					message: `${from.name} is a track itself: choose the site that it was made on.`
				}
			]
		: [];
}

/** What speaks against deleting a site. */
export function whyNotDeleted(sites: readonly Site[], id: string, main: string): SiteIssue[] {
	if (id === main) {
		const message = 'Every lake keeps its first site. Rename it, or delete the lake itself.';
		return [{ field: '', message }];
	}
	const onIt = sites.filter(({ parent }) => parent === id);
	return onIt.length === 0
		? []
		: [{ field: '', message: `${named(onIt)} was made on its ice: delete that first.` }];
}

function named(sites: readonly Site[]): string {
	return sites.map(({ name }) => name).join(', ');
}
