import { inventedSource } from '../invented-source.ts';

export interface ApiCall {
	method: string;
	/** Below the API's top; `{reading}` and the like stand for ids that are there. */
	path: string;
	body: unknown;
}

const LAKE = '/lakes/{lake}';
const source = inventedSource();

const reading = {
	on: '2027-01-20',
	place: 'Middle',
	kind: 'measured',
	holes: [
		{ total_m: 0.31, snow_m: 0.1 },
		{ clear_m: 0.2, white_m: 0.12, slush_m: 0, freeboard_m: 0.02 }
	],
	core: 'sound',
	by: 'A',
	secondHand: false,
	remark: 'two\nlines'
};
const load = {
	name: 'Two sleds',
	mass_kg: 900,
	use: 'snowmobile',
	parked_h: 2,
	wetCracks: 1,
	current: true,
	group: false,
	trailer: { mass_kg: 300, apart_m: null },
	count: 2,
	spacing_m: 20
};
const spot = {
	name: 'Inlet',
	kind: 'inletOutlet',
	latitude: 47.41,
	longitude: -38.21,
	checkedOn: '2027-01-19',
	remark: 'thin'
};
const route = {
	name: 'Across',
	startsAtShore: true,
	endsAtShore: false,
	points: [
		{ name: 'Pier', latitude: 47.4, longitude: -38.2 },
		{ name: 'Island', latitude: 47.42, longitude: -38.22, leg_m: 900 }
	]
};
const winter = {
	freezeUpOn: '2026-12-01',
	freezeUpBy: '2026-12-04',
	iceOutOn: null,
	events: [
		{ kind: 'reopened', on: '2026-12-20', refrozeOn: '2026-12-24' },
		{ kind: 'cleared', on: '2027-01-02', snow_m: 0.02 },
		{ kind: 'packed', on: '2027-01-03', density_kg_m3: 400 },
		{ kind: 'pumped', on: '2027-01-04', water_m: 0.05 }
	]
};

/** A good call for every address that takes JSON, but for those that would call other servers. */
export const API_CALLS: readonly ApiCall[] = [
	{
		method: 'POST',
		path: '/lakes',
		body: { name: 'A', latitude: 60, longitude: 20, water: 'lake', area_km2: 3, timeZone: 'UTC' }
	},
	{ method: 'PATCH', path: LAKE, body: { name: 'B', elevation_m: 300, chartSet: 'common' } },
	{ method: 'PUT', path: `${LAKE}/winters/2026-27`, body: winter },
	{
		method: 'PUT',
		path: `${LAKE}/winters/2026-27/removal`,
		body: { removalOn: '2027-03-15', leads: [{ load: 'on-foot', lead_d: 3 }] }
	},
	{ method: 'POST', path: `${LAKE}/readings`, body: reading },
	{ method: 'POST', path: `${LAKE}/readings`, body: [reading, { ...reading, kind: 'atLeast' }] },
	{
		method: 'PATCH',
		path: `${LAKE}/readings/{reading}`,
		body: { on: '2027-01-21', holes: reading.holes }
	},
	{
		method: 'PUT',
		path: `${LAKE}/readings/{reading}/position`,
		body: { latitude: 47.4, longitude: -38.2 }
	},
	{ method: 'POST', path: `${LAKE}/sites`, body: { name: 'Bay', kind: 'bay', parent: null } },
	{ method: 'PATCH', path: `${LAKE}/sites/main`, body: { name: 'Basin' } },
	{ method: 'POST', path: `${LAKE}/loads`, body: load },
	{ method: 'PATCH', path: `${LAKE}/loads/{load}`, body: { mass_kg: 500, trailer: null } },
	{ method: 'PUT', path: `${LAKE}/loads/shown`, body: { shown: ['on-foot'] } },
	{ method: 'POST', path: `${LAKE}/weak-spots`, body: spot },
	{ method: 'PUT', path: `${LAKE}/weak-spots/{spot}`, body: { ...spot, name: 'Outlet' } },
	{ method: 'POST', path: `${LAKE}/routes`, body: route },
	{ method: 'PUT', path: `${LAKE}/routes/{route}`, body: route },
	{
		method: 'PUT',
		path: `${LAKE}/trip`,
		body: { emergency: '112', party: 'A and B', back: 'by dark', told: 'C' }
	},
	{ method: 'POST', path: '/sources', body: { source } },
	{ method: 'PATCH', path: '/sources/{source}', body: { source: { ...source, name: 'Other' } } },
	{
		method: 'PUT',
		path: `${LAKE}/sources`,
		body: { order: [{ source: 'csv' }, { source: '{source}', correctsElevation: false }] }
	},
	{ method: 'PATCH', path: `${LAKE}/telling`, body: { loads: ['on-foot'], readingAfter_d: 10 } },
	{
		method: 'PUT',
		path: `${LAKE}/telling/webhook`,
		body: { address: 'https://hooks.invalid/x', kinds: ['thawAhead'] }
	},
	{ method: 'PATCH', path: `${LAKE}/telling/webhook`, body: { kinds: ['wentThrough'] } }
];

/** Addresses that are read, with what their queries are made of. */
export const QUERIES: readonly string[] = [
	`${LAKE}/readings?site=main&winter=2026-27`,
	`${LAKE}/weather?from=2026-12-01&to=2027-01-31`,
	`${LAKE}/winters/2026-27/removal`,
	`${LAKE}/routes/{route}/holes?vehicle=1`,
	`${LAKE}/telling/messages?limit=10`,
	'/sources/log?source={source}&lake={lake}&onlyFaults=1&limit=5'
];
