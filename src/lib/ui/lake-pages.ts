/** Whether a page answers one of the three questions, takes in a hole or other facts, or tells of places. */
export type LakePageGroup = 'question' | 'hole' | 'place' | 'record';

export interface LakePageLink {
	path: string;
	/** How links to it read. */
	label: string;
	/** How it is headed. */
	title: string;
	group: LakePageGroup;
	/** Who at least may see it. */
	least: 'guest' | 'helper' | 'owner';
}

/** The pages of a lake, in the order of their links. */
export const LAKE_PAGES: readonly LakePageLink[] = [
	{ path: 'early-ice', label: 'Early ice', title: 'Early ice', group: 'question', least: 'guest' },
	{ path: 'going-on', label: 'Going on', title: 'Going on', group: 'question', least: 'guest' },
	{
		path: 'coming-off',
		label: 'Coming off',
		title: 'Coming off',
		group: 'question',
		least: 'guest'
	},
	{
		path: 'at-the-hole',
		label: 'Log a hole',
		title: 'At the hole',
		group: 'hole',
		least: 'helper'
	},
	{ path: 'sites', label: 'Sites', title: 'Sites', group: 'place', least: 'helper' },
	{ path: 'weak-spots', label: 'Weak spots', title: 'Weak spots', group: 'place', least: 'guest' },
	{ path: 'trip', label: 'Trip sheet', title: 'Trip sheet', group: 'place', least: 'helper' },
	{ path: 'readings', label: 'Readings', title: 'Readings', group: 'record', least: 'guest' },
	{ path: 'weather', label: 'Weather', title: 'Weather', group: 'record', least: 'owner' },
	{
		path: 'winter',
		label: 'Freeze-up',
		title: 'Freeze-up and events',
		group: 'record',
		least: 'helper'
	},
	{ path: 'loads', label: 'Loads', title: 'Loads', group: 'record', least: 'owner' },
	{
		path: 'how-good',
		label: 'How good',
		title: 'How good was it',
		group: 'record',
		least: 'guest'
	},
	{ path: 'history', label: 'History', title: 'History', group: 'record', least: 'helper' },
	{ path: 'telling', label: 'Being told', title: 'Being told', group: 'record', least: 'owner' },
	{ path: 'edit', label: 'Edit', title: 'The lake itself', group: 'record', least: 'owner' }
];

/** The links of one group. */
export function lakePagesOf(group: LakePageGroup): LakePageLink[] {
	return LAKE_PAGES.filter((page) => page.group === group);
}

/** The page with this heading, by its path; undefined for one that has no link of its own. */
export function lakePageTitled(title: string): string | undefined {
	return LAKE_PAGES.find((page) => page.title === title)?.path;
}
