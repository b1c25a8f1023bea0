import {
	DEFAULT_SETTINGS,
	fetchBoth,
	fetchWeather,
	trySource,
	type FetchSettings
} from './source/contract.ts';

/** How weather services are reached, and what chance and waiting are here. */
export interface WeatherAccess {
	fetchWeather: typeof fetchWeather;
	fetchBoth: typeof fetchBoth;
	trySource: typeof trySource;
	settings: FetchSettings;
	/** Where services can reach the operator: `FROSTLEDGER_CONTACT`. */
	contact: string | null;
	/** Between 0 and 1: spreads what would otherwise all be asked at once. */
	random: () => number;
	/** Resolves after so long, or at once when the signal says stop. */
	wait: (duration_ms: number, signal: AbortSignal) => Promise<void>;
}

/** Reads `FROSTLEDGER_CONTACT` and `FROSTLEDGER_SOURCE_HOSTS`. */
export function openWeather(
	environment: Readonly<Record<string, string | undefined>>
): WeatherAccess {
	const contact = environment['FROSTLEDGER_CONTACT']?.trim() || null;
	const allowedHosts = (environment['FROSTLEDGER_SOURCE_HOSTS'] ?? '')
		.split(/[\s,]+/)
		.filter((name) => name !== '')
		.map((name) => name.toLowerCase());
	const settings = { ...DEFAULT_SETTINGS, allowedHosts };
	return { fetchWeather, fetchBoth, trySource, settings, contact, random: Math.random, wait };
}

function wait(duration_ms: number, signal: AbortSignal): Promise<void> {
	return new Promise((resolve) => {
		if (signal.aborted) return resolve();
		const done = () => {
			clearTimeout(timer);
			signal.removeEventListener('abort', done);
			resolve();
		};
		const timer = setTimeout(done, duration_ms);
		timer.unref();
		signal.addEventListener('abort', done, { once: true });
	});
}
