const LAKE = '/lakes/pinder-lake';

/** What `tests/screenshots.ts` takes pictures of, by name: pages of the invented lake in their states. */
export const PICTURED: Record<string, string> = {
	lakes: '/',
	method: '/method',
	storage: '/storage',
	nowhere: '/nowhere',
	lake: LAKE,
	'lake-early': `${LAKE}?asOf=2025-12-02`,
	'lake-in-thaw': `${LAKE}?asOf=2025-04-08`,
	'lake-open': `${LAKE}?asOf=2025-05-20`,
	'early-ice-before': `${LAKE}/early-ice?asOf=2025-11-18`,
	'early-ice-young': `${LAKE}/early-ice?asOf=2025-12-02`,
	'early-ice-midwinter': `${LAKE}/early-ice`,
	'going-on': `${LAKE}/going-on`,
	'coming-off': `${LAKE}/coming-off`,
	'coming-off-in-thaw': `${LAKE}/coming-off?asOf=2025-04-08`,
	sites: `${LAKE}/sites`,
	'weak-spots': `${LAKE}/weak-spots`,
	trip: `${LAKE}/trip`,
	'at-the-hole': `${LAKE}/at-the-hole`,
	readings: `${LAKE}/readings`,
	weather: `${LAKE}/weather`,
	winter: `${LAKE}/winter`,
	loads: `${LAKE}/loads`,
	'how-good': `${LAKE}/how-good`,
	telling: `${LAKE}/telling`,
	edit: `${LAKE}/edit`,
	'new-lake': '/lakes/new',
	sources: '/sources',
	'new-source': '/sources/new',
	'sources-log': '/sources/log'
};
