/** The pictures of the README, by their names in `data/pictures`: what is seen first of the invented lake. */
export const README_PICTURES = [
	{ name: 'home', address: '/', width: 1000, height: 520, scheme: 'light' },
	{ name: 'lake', address: '/lakes/pinder-lake', width: 1100, height: 800, scheme: 'light' },
	{
		name: 'coming-off',
		address: '/lakes/pinder-lake/coming-off',
		width: 390,
		height: 800,
		scheme: 'dark'
	}
] as const;

/** More than this a page of text does not carry along. */
export const LARGEST_bytes = 150_000;
