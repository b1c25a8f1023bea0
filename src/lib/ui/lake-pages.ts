/** The pages where a lake's facts go in: how links to them read, and how they are headed. */
export const LAKE_PAGES = [
	{ path: 'readings', label: 'Readings', title: 'Readings' },
	{ path: 'weather', label: 'Weather', title: 'Weather' },
	{ path: 'winter', label: 'Freeze-up', title: 'Freeze-up and events' },
	{ path: 'loads', label: 'Loads', title: 'Loads' },
	{ path: 'how-good', label: 'How good', title: 'How good was it' },
	{ path: 'edit', label: 'Edit', title: 'The lake itself' }
] as const;
