/** What a source can tell, in the order in which it matters. */
export const ROLES = [
	'air',
	'min',
	'max',
	'precipitation',
	'snowfall',
	'landSnow',
	'wind'
] as const;

export type Role = (typeof ROLES)[number];

export const ROLE_LABELS: Readonly<Record<Role, string>> = {
	air: 'Air temperature',
	min: 'Lowest of the day',
	max: 'Highest of the day',
	precipitation: 'Precipitation',
	snowfall: 'Snowfall',
	landSnow: 'Snow depth on land',
	wind: 'Wind speed'
};

/** How times are written. */
export const TIME_FORM_WORDS: Readonly<Record<string, string>> = {
	iso: '2027-01-31T06:00, with or without an offset',
	interval: 'a time with a length behind it, as 2027-01-31T06:00Z/PT1H',
	epoch_s: 'seconds since 1970',
	epoch_ms: 'milliseconds since 1970',
	Ymd: '20270131, run together',
	'd/m/Y': 'day/month/year',
	'm/d/Y': 'month/day/year',
	'd mon Y': '31 Jan 2027',
	'mon d Y': 'Jan 31, 2027'
};

export const ZONES = [
	{ value: 'offset', label: 'each time says its offset itself' },
	{ value: 'utc', label: 'UTC' },
	{ value: 'lake', label: 'the clock at the lake' },
	{ value: 'name', label: 'the zone named below' },
	{ value: 'path', label: 'the zone that the answer names, at the place below' }
] as const;

export const STAMPS = [
	{ value: 'start', label: 'the start of the hour or day' },
	{ value: 'end', label: 'the end of the hour or day' },
	{ value: 'instant', label: 'a moment, with others between left out' }
] as const;
