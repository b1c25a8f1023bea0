import type { Rules } from './least.ts';

const LAKE = '/lakes/[lake]';

/** Who may see which page and send which of its forms, by route and form action. */
export const PAGE_RULES: Rules = {
	'/': { GET: 'guest', '?/restore': 'owner' },
	'/method': { GET: 'anybody' },
	'/on-this-phone': { GET: 'anybody' },
	'/units': { POST: 'anybody' },
	'/sign-in': { GET: 'anybody', '?/default': 'anybody' },
	'/join/[secret]': { GET: 'anybody', '?/default': 'anybody' },
	'/look/[secret]': { GET: 'anybody' },
	'/account': {
		GET: 'guest',
		'?/out': 'guest',
		'?/everywhere': 'helper',
		'?/token': 'helper',
		'?/revoke': 'helper'
	},
	'/people': {
		GET: 'owner',
		'?/helper': 'owner',
		'?/renew': 'owner',
		'?/remove': 'owner',
		'?/guest': 'owner',
		'?/revoke': 'owner',
		'?/everybody': 'owner'
	},

	'/sources': {
		GET: 'owner',
		'?/refresh': 'owner',
		'?/import': 'owner',
		'?/delete': 'owner',
		'?/restore': 'owner'
	},
	'/sources/new': { GET: 'owner', '?/try': 'owner', '?/store': 'owner' },
	'/sources/log': { GET: 'owner' },
	'/sources/[source]': {
		GET: 'owner',
		'?/facts': 'owner',
		'?/key': 'owner',
		'?/forgetKey': 'owner',
		'?/switch': 'owner',
		'?/removeAddress': 'owner'
	},
	'/sources/[source]/addresses/[address]': { GET: 'owner', '?/try': 'owner', '?/store': 'owner' },
	'/storage': { GET: 'owner', '?/backup': 'owner' },
	'/storage/bring': { GET: 'owner', '?/look': 'owner', '?/store': 'owner' },
	'/lakes/new': { GET: 'owner', '?/default': 'owner' },

	[LAKE]: { GET: 'guest' },
	[`${LAKE}/what-if.json`]: { GET: 'guest' },
	[`${LAKE}/early-ice`]: { GET: 'guest' },
	[`${LAKE}/going-on`]: { GET: 'guest' },
	[`${LAKE}/coming-off`]: { GET: 'guest', '?/store': 'owner' },
	[`${LAKE}/history`]: { GET: 'helper', '?/undo': 'helper' },
	[`${LAKE}/how-good`]: { GET: 'guest' },
	[`${LAKE}/edit`]: { GET: 'owner', '?/store': 'owner', '?/delete': 'owner' },
	[`${LAKE}/edit/deleted`]: { GET: 'owner', '?/default': 'owner' },
	[`${LAKE}/telling`]: {
		GET: 'owner',
		'?/what': 'owner',
		'?/make': 'owner',
		'?/revoke': 'owner',
		'?/webhook': 'owner',
		'?/kinds': 'owner',
		'?/test': 'owner',
		'?/resume': 'owner',
		'?/remove': 'owner'
	},
	[`${LAKE}/weather`]: {
		GET: 'owner',
		'?/look': 'owner',
		'?/import': 'owner',
		'?/use': 'owner',
		'?/unuse': 'owner',
		'?/move': 'owner',
		'?/correct': 'owner',
		'?/refresh': 'owner',
		'?/earlierWinters': 'owner'
	},
	[`${LAKE}/weather/import`]: { POST: 'owner' },
	[`${LAKE}/loads`]: {
		GET: 'owner',
		'?/chartSet': 'owner',
		'?/show': 'owner',
		'?/add': 'owner',
		'?/delete': 'owner',
		'?/restore': 'owner'
	},
	[`${LAKE}/loads/[load]`]: { GET: 'owner', '?/default': 'owner' },

	[`${LAKE}/at-the-hole`]: { GET: 'helper', '?/default': 'helper' },
	[`${LAKE}/readings`]: {
		GET: 'guest',
		'?/add': 'helper',
		'?/hole': 'helper',
		'?/delete': 'helper',
		'?/restore': 'helper',
		'?/upload': 'helper'
	},
	[`${LAKE}/readings/[reading]`]: {
		GET: 'helper',
		'?/store': 'helper',
		'?/forget': 'helper',
		'?/hole': 'helper',
		'?/take': 'helper',
		'?/leave': 'helper'
	},
	[`${LAKE}/readings/table.csv`]: { GET: 'guest' },
	[`${LAKE}/winter`]: {
		GET: 'helper',
		'?/dates': 'helper',
		'?/delete': 'owner',
		'?/restore': 'owner',
		'?/addEvent': 'helper',
		'?/removeEvent': 'helper',
		'?/restoreEvent': 'helper'
	},
	[`${LAKE}/sites`]: { GET: 'helper', '?/add': 'owner', '?/restore': 'owner' },
	[`${LAKE}/sites/[site]`]: { GET: 'helper', '?/store': 'owner', '?/delete': 'owner' },
	[`${LAKE}/sites/[site]/note`]: { GET: 'helper' },

	[`${LAKE}/weak-spots`]: {
		GET: 'guest',
		'?/add': 'helper',
		'?/broke': 'helper',
		'?/checked': 'helper',
		'?/delete': 'helper',
		'?/restore': 'helper',
		'?/deleteRoute': 'helper',
		'?/restoreRoute': 'helper',
		'?/gpx': 'helper'
	},
	[`${LAKE}/weak-spots/[spot]`]: { GET: 'helper', '?/default': 'helper' },
	[`${LAKE}/weak-spots/places.gpx`]: { GET: 'guestWithPlaces' },
	[`${LAKE}/weak-spots/routes/new`]: { GET: 'helper', '?/add': 'helper', '?/point': 'helper' },
	[`${LAKE}/weak-spots/routes/[route]`]: {
		GET: 'helper',
		'?/change': 'helper',
		'?/point': 'helper'
	},
	[`${LAKE}/trip`]: { GET: 'helper', '?/show': 'helper' }
};
