import { readdirSync, readFileSync } from 'node:fs';
import { setupServer } from 'msw/node';
import { afterAll, afterEach, beforeAll } from 'vitest';
import {
	weatherSource,
	type Ask,
	type FetchSettings,
	type WeatherSource
} from '#lib/server/weather/source/contract.ts';

/** A network in which nothing exists but what a test puts there. */
export function inventedNetwork() {
	const server = setupServer();
	beforeAll(() => server.listen({ onUnhandledRequest: 'error' }));
	afterEach(() => server.resetHandlers());
	afterAll(() => server.close());
	return server;
}

/** A question about an invented lake at noon (UTC) on 20 January 2026. */
export function ask(changes: Partial<Ask> = {}): Ask {
	return {
		latitude: 61.2,
		longitude: 8.9,
		elevation_m: 400,
		timeZone: 'Europe/Oslo',
		from: '2026-01-20',
		to: '2026-01-24',
		part: 'forecast',
		key: null,
		contact: 'ice@frostledger.example',
		station: null,
		validators: null,
		now: new Date('2026-01-20T12:00:00Z'),
		...changes
	};
}

export const SETTINGS: FetchSettings = {
	allowedHosts: [],
	timeOut_ms: 2000,
	maxBytes: 1_000_000,
	maxRedirects: 3
};

/** An invented service with columns side by side. */
export function inventedSource(changes: Partial<WeatherSource> = {}): WeatherSource {
	return {
		id: 'invented',
		name: 'Invented Weather',
		homepage: 'https://weather.example/',
		terms: { attribution: 'Invented', note: 'Invented for the tests.' },
		limits: { perDay: 1000, minInterval_min: 0 },
		needsKey: false,
		wantsContact: false,
		calls: [
			{
				part: 'both',
				address: 'https://weather.example/hours?from={from}&to={to}',
				format: 'json',
				chunk_d: 400,
				reach: {},
				mapping: {
					layout: 'columns',
					step: 'hourly',
					time: { path: '$.time', form: 'iso', zone: 'utc', stamp: 'start' },
					values: {
						air: { path: '$.air', unit: '°C' },
						precipitation: { path: '$.rain', unit: 'mm' }
					}
				}
			}
		],
		...changes
	};
}

/** Times of whole hours from an instant on, as text in UTC. */
export function hoursFrom(start: string, count: number): string[] {
	const start_ms = Date.parse(start);
	return Array.from({ length: count }, (_, at) =>
		new Date(start_ms + at * 3_600_000).toISOString().slice(0, 16)
	);
}

/** A winter day's temperatures: coldest before sunrise, warmest after noon, by UTC. */
export function wave_degC(at: number): number {
	return Math.round((-8 + 4 * Math.cos(((at - 14) / 24) * 2 * Math.PI) - at * 0.01) * 10) / 10;
}

/** The sources that come with the app, by the names of their files. */
export function sourceFiles(): Map<string, WeatherSource> {
	const names = readdirSync('data/sources').filter((name) => name.endsWith('.json'));
	return new Map(
		names.map((name) => [
			name.replace('.json', ''),
			weatherSource.parse(JSON.parse(readFileSync(`data/sources/${name}`, 'utf8')))
		])
	);
}
