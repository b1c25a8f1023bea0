import { http, HttpResponse } from 'msw';
import { expect, test } from 'vitest';
import { dayFromHours } from '#lib/model/hours-to-days.ts';
import {
	fetchWeather,
	weatherSource,
	type WeatherSource
} from '#lib/server/weather/source/contract.ts';
import { startOfDay_s } from '#lib/server/weather/source/lake-days.ts';
import {
	ask,
	inventedNetwork,
	SETTINGS,
	sourceFiles,
	wave_degC
} from '../../../support/weather-service.ts';

/** Answers are small ones that we wrote in the shape that each service documents. */
const network = inventedNetwork();

const HOUR_s = 3600;
const readyMade = sourceFiles();

function source(id: string): WeatherSource {
	const found = readyMade.get(id);
	if (!found) throw new Error(`no source ${id}`);
	return found;
}

test('every file of the folder is a source, named as its id, with its terms', () => {
	expect(readyMade.size).toBeGreaterThanOrEqual(6);
	for (const [name, { id }] of readyMade) expect(id).toBe(name);
	for (const { terms, limits, documentation } of readyMade.values()) {
		expect(terms.attribution).not.toBe('');
		expect(terms.licence).toBeDefined();
		expect(terms.note).toMatch(/Check the terms/);
		expect(documentation).toMatch(/^https:/);
		expect(limits.perDay).toBeLessThanOrEqual(2000);
	}
});

test('a source goes out as JSON and comes in again unchanged, without a key', () => {
	for (const each of readyMade.values()) {
		const text = JSON.stringify(each);
		expect(weatherSource.parse(JSON.parse(text))).toEqual(each);
		expect(text).not.toMatch(/api_?key|token/i);
	}
});

test('arrays by variable, forecast: sums of the hour before belong to that hour', async () => {
	const start_s = startOfDay_s('2026-01-20', 'Europe/Oslo');
	const time = Array.from({ length: 72 }, (_, at) => start_s + at * HOUR_s);
	const asked: URL[] = [];
	network.use(
		http.get('https://api.open-meteo.com/v1/forecast', ({ request }) => {
			asked.push(new URL(request.url));
			return HttpResponse.json({
				latitude: 61.25,
				longitude: 8.875,
				elevation: 412,
				utc_offset_seconds: 3600,
				timezone: 'Europe/Oslo',
				hourly_units: { time: 'unixtime', temperature_2m: '°C', snowfall: 'cm', snow_depth: 'm' },
				hourly: {
					time,
					temperature_2m: time.map((_, at) => wave_degC(at)),
					precipitation: time.map((_, at) => (at === 30 ? 1.4 : 0)),
					snowfall: time.map((_, at) => (at === 30 ? 0.98 : 0)),
					snow_depth: time.map(() => 0.32),
					wind_speed_10m: time.map(() => 3.2)
				}
			});
		})
	);
	const answer = await fetchWeather(source('open-meteo'), ask({ to: '2026-01-22' }), SETTINGS);
	expect(answer.faults).toEqual([]);
	expect(answer.outcome).toBe('ok');
	expect(asked[0]?.searchParams.get('timezone')).toBe('Europe/Oslo');
	expect(asked[0]?.searchParams.get('start_date')).toBe('2026-01-20');
	// The running hour began at noon UTC; what is over is no forecast.
	expect(answer.hours[0]?.at_s).toBe(Date.UTC(2026, 0, 20, 12) / 1000);
	const wet = answer.hours.filter(({ precipitation_kg_m2 }) => (precipitation_kg_m2 ?? 0) > 0);
	expect(wet).toHaveLength(1);
	expect(wet[0]?.at_s).toBe(start_s + 29 * HOUR_s);
	// The service's own rule: 7 cm of its snow are 10 mm of water.
	expect(wet[0]?.snowfall_kg_m2).toBeCloseTo(1.4, 3);
	expect(answer.hours[5]).toMatchObject({ landSnow_m: 0.32, wind_m_s: 3.2 });
	expect(answer.station).toEqual({
		name: null,
		latitude: 61.25,
		longitude: 8.875,
		elevation_m: 412
	});
});

test('arrays by variable, archive: empty hours at the end are age, not gaps', async () => {
	const start_s = startOfDay_s('2026-01-01', 'Europe/Oslo');
	const time = Array.from({ length: 20 * 24 }, (_, at) => start_s + at * HOUR_s);
	const known = (at: number) => at < 14 * 24;
	network.use(
		http.get('https://archive-api.open-meteo.com/v1/archive', () =>
			HttpResponse.json({
				hourly: {
					time,
					temperature_2m: time.map((_, at) => (known(at) ? wave_degC(at) : null)),
					precipitation: time.map((_, at) => (known(at) ? 0.1 : null)),
					snowfall: time.map((_, at) => (known(at) ? 0.07 : null)),
					snow_depth: time.map((_, at) => (known(at) ? 0.2 : null)),
					wind_speed_10m: time.map((_, at) => (known(at) ? 2 : null))
				}
			})
		)
	);
	const question = ask({ part: 'history', from: '2026-01-01', to: '2026-01-20' });
	const answer = await fetchWeather(source('open-meteo-archive'), question, SETTINGS);
	expect(answer.outcome).toBe('ok');
	// 5 days late is usual for it; 5.5 days are within the grace of 6 hours more.
	expect(answer.faults.map(({ code }) => code)).toEqual(['stale']);
	expect(answer.faults[0]?.text).toMatch(/133 hours old, where 120 hours are usual/);
	expect(answer.hours.filter(({ air_degC }) => air_degC !== null)).toHaveLength(14 * 24);
	expect(answer.hasPrecipitation).toBe(true);
});

function timeseries(hours: readonly number[]) {
	const start_ms = Date.UTC(2026, 0, 20, 11);
	return hours.map((hour, at) => {
		const isHourly = (hours[at + 1] ?? Infinity) - hour === 1;
		return {
			time: new Date(start_ms + hour * 3_600_000).toISOString().replace('.000', ''),
			data: {
				instant: { details: { air_temperature: hour / -2, wind_speed: 4 } },
				...(isHourly ? { next_1_hours: { details: { precipitation_amount: 0.2 } } } : {}),
				next_6_hours: { details: { precipitation_amount: 3 } }
			}
		};
	});
}

test('rows with nested names: six-hour steps are interpolated, their amounts spread', async () => {
	const agents: (string | null)[] = [];
	const hours = [0, 1, 2, 3, 4, 5, 6, 12, 18, 24, 30];
	network.use(
		http.get('https://api.met.no/weatherapi/locationforecast/2.0/compact', ({ request }) => {
			agents.push(request.headers.get('user-agent'));
			return HttpResponse.json(
				{
					type: 'Feature',
					geometry: { type: 'Point', coordinates: [8.9, 61.2, 431] },
					properties: {
						meta: { updated_at: '2026-01-20T11:21:33Z', units: { air_temperature: 'celsius' } },
						timeseries: timeseries(hours)
					}
				},
				{
					headers: {
						expires: 'Tue, 20 Jan 2026 12:31:05 GMT',
						'last-modified': 'Tue, 20 Jan 2026 11:59:22 GMT'
					}
				}
			);
		})
	);
	const answer = await fetchWeather(source('met-norway'), ask(), SETTINGS);
	expect(answer.outcome).toBe('ok');
	expect(answer.faults).toEqual([]);
	expect(agents).toEqual(['Frostledger/0.1 (ice@frostledger.example)']);
	expect(answer.issuedAt?.toISOString()).toBe('2026-01-20T11:21:33.000Z');
	expect(answer.freshUntilAt?.toISOString()).toBe('2026-01-20T12:31:05.000Z');
	expect(answer.station?.elevation_m).toBe(431);
	const at = (hour: number) =>
		answer.hours.find(({ at_s }) => at_s === Date.UTC(2026, 0, 20, 11) / 1000 + hour * HOUR_s);
	// Halfway between −3 at hour 6 and −6 at hour 12.
	expect(at(9)?.air_degC).toBeCloseTo(-4.5, 9);
	expect(at(2)?.precipitation_kg_m2).toBeCloseTo(0.2, 9);
	// Hour 6 has no amount of its own hour: a sixth of the next six.
	expect(at(6)?.precipitation_kg_m2).toBeCloseTo(0.5, 9);
	expect(at(17)?.precipitation_kg_m2).toBeCloseTo(0.5, 9);
	expect(answer.hours.every(({ air_degC }) => air_degC !== null)).toBe(false);
	expect(at(30)?.air_degC).toBe(-15);
});

test('a forecast is asked for again with its own words, and unchanged is no failure', async () => {
	const asked: (string | null)[] = [];
	network.use(
		http.get('https://api.met.no/weatherapi/locationforecast/2.0/compact', ({ request }) => {
			asked.push(request.headers.get('if-modified-since'));
			if (asked.length > 1) return new HttpResponse(null, { status: 304 });
			return HttpResponse.json(
				{ properties: { meta: {}, timeseries: timeseries([0, 1, 2, 3, 4]) } },
				{ headers: { 'last-modified': 'Tue, 20 Jan 2026 11:59:22 GMT' } }
			);
		})
	);
	const first = await fetchWeather(source('met-norway'), ask(), SETTINGS);
	const second = await fetchWeather(
		source('met-norway'),
		ask({ validators: first.validators }),
		SETTINGS
	);
	expect(second).toMatchObject({ outcome: 'unchanged', hours: [], faults: [] });
	expect(second.validators).toEqual(first.validators);
	const elsewhere = ask({ validators: first.validators, latitude: 60 });
	await fetchWeather(source('met-norway'), elsewhere, SETTINGS);
	expect(asked).toEqual([null, 'Tue, 20 Jan 2026 11:59:22 GMT', null]);
});

function layer(uom: string, values: readonly [time: string, value: number | null][]) {
	return { uom, values: values.map(([validTime, value]) => ({ validTime, value })) };
}

test('two steps and durations: precipitation of six hours falls over six hours', async () => {
	const paths: string[] = [];
	network.use(
		http.get('https://api.weather.gov/*', ({ request }) => {
			const { pathname } = new URL(request.url);
			paths.push(pathname);
			if (pathname.startsWith('/points/')) {
				return HttpResponse.json({
					properties: { forecastGridData: 'https://api.weather.gov/gridpoints/XYZ/34,81' }
				});
			}
			return HttpResponse.json({
				properties: {
					updateTime: '2026-01-20T09:44:51+00:00',
					elevation: { unitCode: 'wmoUnit:m', value: 382.8288 },
					temperature: layer('wmoUnit:degC', [
						['2026-01-20T12:00:00+00:00/PT1H', -11.1],
						['2026-01-20T13:00:00+00:00/PT2H', -10],
						['2026-01-20T15:00:00+00:00/PT3H', -9.4]
					]),
					quantitativePrecipitation: layer('wmoUnit:mm', [
						['2026-01-20T12:00:00+00:00/PT6H', 3.048]
					]),
					snowfallAmount: layer('wmoUnit:mm', [['2026-01-20T12:00:00+00:00/PT6H', 30.48]]),
					windSpeed: layer('wmoUnit:km_h-1', [['2026-01-20T12:00:00+00:00/PT6H', 18]])
				}
			});
		})
	);
	const question = ask({ latitude: 46.123456, longitude: -93.5, timeZone: 'America/Chicago' });
	const answer = await fetchWeather(source('us-weather-service'), question, SETTINGS);
	expect(paths).toEqual(
		['/points/46.1235%2C-93.5', '/gridpoints/XYZ/34,81'].map(decodeURIComponent)
	);
	expect(answer).toMatchObject({ outcome: 'ok', faults: [], calls: 2 });
	expect(answer.hours.map(({ air_degC }) => air_degC)).toEqual([-11.1, -10, -10, -9.4, -9.4, -9.4]);
	for (const hour of answer.hours) {
		expect(hour.precipitation_kg_m2).toBeCloseTo(0.508, 9);
		expect(hour.snowfall_kg_m2).toBeCloseTo(0.508, 9);
		expect(hour.wind_m_s).toBeCloseTo(5, 9);
	}
	expect(answer.station?.elevation_m).toBeCloseTo(382.8, 1);
});

test('two steps to a station: its observations, without precipitation', async () => {
	network.use(
		http.get('https://api.weather.gov/*', ({ request }) => {
			const { pathname } = new URL(request.url);
			if (pathname.startsWith('/points/')) {
				const observationStations = 'https://api.weather.gov/gridpoints/XYZ/34,81/stations';
				return HttpResponse.json({ properties: { observationStations } });
			}
			if (pathname.endsWith('/stations')) {
				return HttpResponse.json({ features: [{ id: 'https://api.weather.gov/stations/KXYZ' }] });
			}
			const features = Array.from({ length: 17 }, (_, at) => ({
				geometry: { type: 'Point', coordinates: [-93.3, 46.2] },
				properties: {
					station: 'https://api.weather.gov/stations/KXYZ',
					elevation: { unitCode: 'wmoUnit:m', value: 390 },
					timestamp: new Date(Date.UTC(2026, 0, 20, 22 - at, 53)).toISOString(),
					temperature: { unitCode: 'wmoUnit:degC', value: -4 - at / 10 },
					windSpeed: { unitCode: 'wmoUnit:km_h-1', value: null }
				}
			}));
			return HttpResponse.json({ features });
		})
	);
	const question = ask({
		part: 'history',
		timeZone: 'America/Chicago',
		to: '2026-01-20',
		now: new Date('2026-01-20T23:10:00Z')
	});
	const answer = await fetchWeather(source('us-weather-service'), question, SETTINGS);
	expect(answer).toMatchObject({ outcome: 'ok', faults: [], calls: 3, hasPrecipitation: false });
	expect(answer.station).toEqual({
		name: 'https://api.weather.gov/stations/KXYZ',
		latitude: 46.2,
		longitude: -93.3,
		elevation_m: 390
	});
	expect(answer.hours).toHaveLength(17);
	expect(answer.hours.at(-1)).toMatchObject({
		at_s: Date.UTC(2026, 0, 20, 22) / 1000,
		air_degC: -4,
		precipitation_kg_m2: null
	});
});

test('rows of observations: history up to now from the same address as the forecast', async () => {
	const weather = Array.from({ length: 48 }, (_, at) => ({
		timestamp: new Date(Date.UTC(2026, 0, 19, 23 + at)).toISOString().replace('.000Z', '+00:00'),
		source_id: 2252,
		precipitation: at === 6 ? 0.6 : 0,
		temperature: wave_degC(at),
		wind_speed: 7.2,
		dew_point: -9
	}));
	network.use(
		http.get('https://api.brightsky.dev/weather', () =>
			HttpResponse.json({
				weather,
				sources: [{ id: 2252, lat: 49.88, lon: 10.92, height: 243, station_name: 'MUSTERSEE' }]
			})
		)
	);
	const question = ask({ timeZone: 'Europe/Berlin', to: '2026-01-21' });
	const past = await fetchWeather(source('bright-sky'), { ...question, part: 'history' }, SETTINGS);
	const coming = await fetchWeather(source('bright-sky'), question, SETTINGS);
	expect(past).toMatchObject({ outcome: 'ok', faults: [] });
	expect(coming).toMatchObject({ outcome: 'ok', faults: [] });
	const noon_s = Date.UTC(2026, 0, 20, 12) / 1000;
	expect(past.hours.at(-1)?.at_s).toBe(noon_s - HOUR_s);
	expect(coming.hours.at(0)?.at_s).toBe(noon_s);
	expect(past.hours.find(({ precipitation_kg_m2 }) => precipitation_kg_m2 === 0.6)?.at_s).toBe(
		Date.UTC(2026, 0, 20, 4) / 1000
	);
	expect(past.station?.name).toBe('MUSTERSEE');
	expect(past.hours[3]?.wind_m_s).toBeCloseTo(2, 9);
});

test('a table by station: days of the calendar, with depths in millimetres', async () => {
	const rows = [
		['2026-01-01', '1.3', '25', '180', '-4.4', '-15.6'],
		['2026-01-02', '0.0', '0', '160', '-6.1', '-20.0'],
		['2026-01-03', '', '', '', '-2.2', '-8.9'],
		['2026-01-04', '5.1', '0', '150', '3.3', '-1.1']
	].map(
		(cells) => `"USC00999999","INVENTED LAKE, ZZ","46.2","-93.3","390.1","${cells.join('","')}"`
	);
	const head =
		'"STATION","NAME","LATITUDE","LONGITUDE","ELEVATION","DATE","PRCP","SNOW","SNWD","TMAX","TMIN"';
	const asked: string[] = [];
	network.use(
		http.get('https://www.ncei.noaa.gov/access/services/data/v1', ({ request }) => {
			asked.push(new URL(request.url).searchParams.get('stations') ?? '');
			return HttpResponse.text([head, ...rows, ''].join('\n'));
		})
	);
	const question = ask({
		part: 'history',
		station: 'USC00999999',
		from: '2026-01-01',
		to: '2026-01-04',
		now: new Date('2026-01-06T12:00:00Z')
	});
	const answer = await fetchWeather(source('noaa-daily'), question, SETTINGS);
	expect(asked).toEqual(['USC00999999']);
	expect(answer).toMatchObject({ outcome: 'ok', hours: [], hasPrecipitation: true });
	expect(answer.days).toHaveLength(4);
	expect(answer.days[0]).toMatchObject({
		on: '2026-01-01',
		air_degC: null,
		min_degC: -15.6,
		max_degC: -4.4,
		precipitation_kg_m2: 1.3,
		snowfall_kg_m2: 2.5,
		landSnow_m: 0.18
	});
	expect(answer.days[2]?.precipitation_kg_m2).toBeNull();
	expect(answer.station).toMatchObject({ name: 'INVENTED LAKE, ZZ', elevation_m: 390.1 });
	const without = await fetchWeather(
		source('noaa-daily'),
		{ ...question, station: null },
		SETTINGS
	);
	expect(without).toMatchObject({ outcome: 'failed', calls: 0 });
	expect(without.faults[0]?.text).toMatch(/enter the station/);
});

test('a day of the thaw is the same whether its hours come in columns or in rows', async () => {
	const start_s = startOfDay_s('2026-01-20', 'Europe/Oslo');
	const time = Array.from({ length: 24 }, (_, at) => start_s + at * HOUR_s);
	const air = time.map((_, at) => Math.round(10 * (2 + wave_degC(at) / 2)) / 10);
	network.use(
		http.get('https://api.open-meteo.com/v1/forecast', () =>
			HttpResponse.json({
				hourly: {
					time,
					temperature_2m: air,
					precipitation: time.map(() => 0),
					snowfall: time.map(() => 0),
					snow_depth: time.map(() => 0),
					wind_speed_10m: time.map(() => 0)
				}
			})
		),
		http.get('https://api.brightsky.dev/weather', () =>
			HttpResponse.json({
				weather: time.map((at_s, at) => ({
					timestamp: new Date(at_s * 1000).toISOString(),
					temperature: air[at],
					precipitation: 0,
					wind_speed: 0
				}))
			})
		)
	);
	const question = ask({
		part: 'history',
		to: '2026-01-20',
		now: new Date('2026-01-20T23:00:00Z')
	});
	const day = { on: '2026-01-20', start_s, end_s: start_s + 86_400 };
	const days = await Promise.all(
		['open-meteo', 'bright-sky'].map(async (id) => {
			const { hours } = await fetchWeather(source(id), question, SETTINGS);
			return dayFromHours(day, hours);
		})
	);
	expect(days[0]?.freezing_degCd).toBeCloseTo(days[1]?.freezing_degCd ?? NaN, 9);
	expect(days[0]?.air_degC).toBeCloseTo(air.reduce((sum, value) => sum + value, 0) / 24, 9);
});
