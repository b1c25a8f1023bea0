import type { Rules } from './least.ts';

const LAKE = '/api/v1/lakes/[lake]';

/** Who may call what of the JSON API and the feeds, by route and method. */
export const API_RULES: Rules = {
	'/api/[...rest]': { GET: 'anybody' },
	'/api/v1/health': { GET: 'open' },
	'/api/v1/ready': { GET: 'open' },
	'/api/v1/openapi.json': { GET: 'guest' },
	'/feeds/[secret]/calendar.ics': { GET: 'open' },
	'/feeds/[secret]/changes.atom': { GET: 'open' },

	'/api/v1/backups': { GET: 'owner', POST: 'owner' },
	'/api/v1/backups/[name]': { GET: 'owner' },
	'/api/v1/winters': { POST: 'owner' },

	'/api/v1/sources': { GET: 'owner', POST: 'owner' },
	'/api/v1/sources/[id]': { GET: 'owner', PATCH: 'owner', DELETE: 'owner' },
	'/api/v1/sources/[id]/export': { GET: 'owner' },
	'/api/v1/sources/[id]/restore': { POST: 'owner' },
	'/api/v1/sources/log': { GET: 'owner' },
	'/api/v1/sources/ready-made': { GET: 'owner' },
	'/api/v1/sources/try': { POST: 'owner' },

	'/api/v1/lakes': { GET: 'helper', POST: 'owner' },
	[LAKE]: { GET: 'guest', PATCH: 'owner', DELETE: 'owner' },
	[`${LAKE}/early-ice`]: { GET: 'guest' },
	[`${LAKE}/forecast`]: { GET: 'guest' },
	[`${LAKE}/forecast.csv`]: { GET: 'guest' },
	[`${LAKE}/winters/[winter]`]: { GET: 'guest', PUT: 'helper', DELETE: 'owner' },
	[`${LAKE}/history`]: { GET: 'helper' },
	[`${LAKE}/winters/[winter]/removal`]: { GET: 'guest', PUT: 'owner' },
	[`${LAKE}/winters.zip`]: { GET: 'helper' },
	[`${LAKE}/weather`]: { GET: 'helper', POST: 'owner' },
	[`${LAKE}/sources`]: { GET: 'owner', PUT: 'owner' },
	[`${LAKE}/refresh`]: { GET: 'helper', POST: 'owner' },
	[`${LAKE}/refresh/earlier-winters`]: { POST: 'owner' },

	[`${LAKE}/sites`]: { GET: 'guest', POST: 'owner' },
	[`${LAKE}/sites/[site]`]: { GET: 'guest', PATCH: 'owner', DELETE: 'owner' },
	[`${LAKE}/loads`]: { GET: 'guest', POST: 'owner' },
	[`${LAKE}/loads/[id]`]: { GET: 'guest', PATCH: 'owner', DELETE: 'owner' },
	[`${LAKE}/loads/shown`]: { GET: 'guest', PUT: 'owner' },

	[`${LAKE}/readings`]: { GET: 'guest', POST: 'helper' },
	[`${LAKE}/readings/[id]`]: { GET: 'guest', PATCH: 'helper', DELETE: 'helper' },
	[`${LAKE}/readings/[id]/versions`]: { GET: 'helper' },
	[`${LAKE}/readings/[id]/versions/[version]`]: { DELETE: 'helper' },
	[`${LAKE}/readings/[id]/position`]: { GET: 'guestWithPlaces', PUT: 'helper', DELETE: 'helper' },

	[`${LAKE}/weak-spots`]: { GET: 'guestWithPlaces', POST: 'helper' },
	[`${LAKE}/weak-spots/[id]`]: { GET: 'guestWithPlaces', PUT: 'helper', DELETE: 'helper' },
	[`${LAKE}/routes`]: { GET: 'guestWithPlaces', POST: 'helper' },
	[`${LAKE}/routes/[id]`]: { GET: 'guestWithPlaces', PUT: 'helper', DELETE: 'helper' },
	[`${LAKE}/routes/[id]/holes`]: { GET: 'guestWithPlaces' },
	[`${LAKE}/places.gpx`]: { GET: 'guestWithPlaces', POST: 'helper' },
	[`${LAKE}/trip`]: { GET: 'helper', PUT: 'helper' },

	[`${LAKE}/telling`]: { GET: 'owner', PATCH: 'owner' },
	[`${LAKE}/telling/calendar`]: { POST: 'owner', DELETE: 'owner' },
	[`${LAKE}/telling/changes`]: { POST: 'owner', DELETE: 'owner' },
	[`${LAKE}/telling/messages`]: { GET: 'owner' },
	[`${LAKE}/telling/webhook`]: { PUT: 'owner', PATCH: 'owner', DELETE: 'owner' },
	[`${LAKE}/telling/webhook/resume`]: { POST: 'owner' },
	[`${LAKE}/telling/webhook/test`]: { POST: 'owner' }
};
