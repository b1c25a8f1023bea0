import type { FetchSettings } from './contract.ts';

/** Common practice, no source: a winter of hours is 0.3 MB, and the slowest services take seconds. */
export const DEFAULT_SETTINGS: FetchSettings = {
	allowedHosts: [],
	timeOut_ms: 20_000,
	maxBytes: 4_000_000,
	maxRedirects: 5
};
