import { http, HttpResponse } from 'msw';
import { expect, test } from 'vitest';
import {
	suggestMapping,
	trialCall,
	trySource,
	type Mapping,
	type Trial
} from '#lib/server/weather/source/contract.ts';
import {
	ask,
	hoursFrom,
	inventedNetwork,
	SETTINGS,
	wave_degC
} from '../../../support/weather-service.ts';

const network = inventedNetwork();
const ADDRESS = 'https://weather.example/trial';
const time = hoursFrom('2026-01-20T00:00Z', 72);
const air = time.map((_, at) => wave_degC(at));

function units(mapping: Mapping | null): Record<string, string> {
	return Object.fromEntries(
		Object.entries(mapping?.values ?? {}).map(([role, value]) => [
			role,
			`${value?.path} ${value?.unit}`
		])
	);
}

test('arrays side by side: names, a list of units and a named zone are enough', () => {
	const { mapping, guesses, words } = suggestMapping({
		timezone: 'Europe/Oslo',
		hourly_units: {
			temperature_2m: '°F',
			precipitation: 'inch',
			wind_speed_10m: 'mp/h',
			snowfall: 'furlong'
		},
		hourly: {
			time,
			temperature_2m: air,
			apparent_temperature: air,
			relative_humidity_2m: air,
			precipitation: air.map(() => 0),
			precipitation_probability: air.map(() => 5),
			snowfall: air.map(() => 0),
			snow_depth: air.map(() => 0.4),
			wind_speed_10m: air.map(() => 3)
		}
	});
	expect(mapping).toMatchObject({
		layout: 'columns',
		step: 'hourly',
		time: { path: '$.hourly.time', form: 'iso', zone: { path: '$.timezone' }, stamp: 'start' }
	});
	expect(units(mapping)).toEqual({
		air: '$.hourly.temperature_2m °F',
		precipitation: '$.hourly.precipitation in',
		wind: '$.hourly.wind_speed_10m mph'
	});
	expect(guesses.find(({ role }) => role === 'landSnow')).toMatchObject({ unit: null });
	expect(guesses.find(({ role }) => role === 'landSnow')?.why).toMatch(/choose one to use it/);
	expect(guesses[0]).toMatchObject({
		role: 'time',
		path: '$.hourly.time',
		sample: time.slice(0, 5)
	});
	expect(words.join(' ')).toMatch(/names their zone at \$\.timezone/);
	expect(words.join(' ')).toMatch(/hour before its time or of the hour after/);
});

test('rows with nested names: the shorter amount leads, the longer one fills in', () => {
	const rows = [0, 1, 2, 3, 4, 5, 6, 12, 18, 24].map((hour) => ({
		time: new Date(Date.UTC(2026, 0, 20, hour)).toISOString(),
		data: {
			instant: { details: { air_temperature: -hour, wind_speed: 3, dew_point_temperature: -9 } },
			...(hour < 6 ? { next_1_hours: { details: { precipitation_amount: 0 } } } : {}),
			next_6_hours: { details: { precipitation_amount: 1, air_temperature_max: 2 } }
		}
	}));
	const { mapping } = suggestMapping({
		properties: {
			meta: {
				updated_at: '2026-01-20T00:10:00Z',
				units: { air_temperature: 'celsius', precipitation_amount: 'mm', wind_speed: 'm/s' }
			},
			timeseries: rows
		}
	});
	expect(mapping).toMatchObject({
		layout: 'rows',
		rows: '$.properties.timeseries[*]',
		time: { path: '$.time', zone: 'offset', stamp: 'instant' },
		issued: '$.properties.meta.updated_at'
	});
	expect(mapping?.values.precipitation).toEqual({
		path: '$.data.next_1_hours.details.precipitation_amount',
		unit: 'mm',
		stamp: 'start',
		duration_h: 1,
		orElse: {
			path: '$.data.next_6_hours.details.precipitation_amount',
			unit: 'mm',
			stamp: 'start',
			duration_h: 6
		}
	});
	expect(mapping?.values.max).toBeUndefined();
	expect(units(mapping)['air']).toBe('$.data.instant.details.air_temperature °C');
});

test('layers with intervals of their own become columns with times of their own', () => {
	const layer = (uom: string, hours: number, value: number) => ({
		uom,
		values: Array.from({ length: 24 / hours }, (_, at) => ({
			validTime: `2026-01-20T${String(at * hours).padStart(2, '0')}:00:00+00:00/PT${hours}H`,
			value
		}))
	});
	const { mapping } = suggestMapping({
		properties: {
			updateTime: '2026-01-20T00:10:00+00:00',
			temperature: layer('wmoUnit:degC', 1, -7),
			dewpoint: layer('wmoUnit:degC', 1, -9),
			quantitativePrecipitation: layer('wmoUnit:mm', 6, 2),
			windSpeed: layer('wmoUnit:km_h-1', 3, 10)
		}
	});
	expect(mapping).toMatchObject({
		layout: 'columns',
		time: {
			path: '$.properties.temperature.values[*].validTime',
			form: 'interval',
			zone: 'offset'
		},
		issued: '$.properties.updateTime',
		values: {
			precipitation: {
				path: '$.properties.quantitativePrecipitation.values[*].value',
				unit: 'mm',
				time: '$.properties.quantitativePrecipitation.values[*].validTime'
			},
			wind: { unit: 'km/h' }
		}
	});
	expect(mapping?.values.air?.time).toBeUndefined();
});

test('observations with a value and its unit in an object', () => {
	const { mapping } = suggestMapping({
		features: [0, 1, 2].map((hour) => ({
			properties: {
				timestamp: `2026-01-20T0${hour}:53:00+00:00`,
				temperature: { unitCode: 'wmoUnit:degC', value: -4 },
				windSpeed: { unitCode: 'wmoUnit:km_h-1', value: 10 },
				precipitationLastHour: { unitCode: 'wmoUnit:mm', value: 0 }
			}
		}))
	});
	expect(mapping).toMatchObject({ layout: 'rows', rows: '$.features[*]' });
	expect(units(mapping)).toEqual({
		air: '$.properties.temperature.value °C',
		precipitation: '$.properties.precipitationLastHour.value mm',
		wind: '$.properties.windSpeed.value km/h'
	});
	expect(mapping?.values.precipitation?.stamp).toBe('end');
});

test('rows that are arrays, days, seconds since 1970, odd names', () => {
	const days = suggestMapping({
		'daily data': [
			{ date: '2026-01-20', tmin: -9, tmax: -2 },
			{ date: '2026-01-21', tmin: -12, tmax: -4 }
		]
	});
	expect(days.mapping).toMatchObject({ rows: "$['daily data'][*]", step: 'daily' });
	expect(units(days.mapping)).toEqual({ min: '$.tmin °C', max: '$.tmax °C' });
	const epochs = suggestMapping({
		list: [0, 1, 2].map((at) => ({ dt: 1_768_910_400 + at * 10_800, main: { temp: 266.1 + at } }))
	});
	expect(epochs.mapping).toMatchObject({
		time: { path: '$.dt', form: 'epoch_s', zone: 'utc', stamp: 'instant' },
		values: { air: { path: '$.main.temp', unit: 'K' } }
	});
});

test('nothing is suggested where nothing is found', () => {
	for (const json of [null, 17, [], {}, { time }, { a: [1, 2], b: [3, 4] }, { error: 'no' }]) {
		const { mapping, words } = suggestMapping(json);
		expect(mapping).toBeNull();
		expect(words[0]).toMatch(/choose the places by hand/);
	}
});

function tryIt(changes: Partial<Parameters<typeof trySource>[0]> = {}, key: string | null = null) {
	const call = trialCall.parse({ address: ADDRESS, format: 'json', mapping: null, ...changes });
	return trySource(call, ask({ key }), SETTINGS);
}

function text({ raw, suggestion, words, answer, answeredBy }: Trial): string {
	return JSON.stringify({ raw, suggestion, words, answer, answeredBy });
}

test('a try shows what came beside what was understood, past and coming hours alike', async () => {
	network.use(http.get(ADDRESS, () => HttpResponse.json({ hourly: { time, temp_c: air } })));
	const trial = await tryIt();
	expect(trial).toMatchObject({
		status: 200,
		contentType: 'application/json',
		answeredBy: 'weather.example/trial',
		isCut: false
	});
	expect(JSON.parse(trial.raw)).toEqual({ hourly: { time, temp_c: air } });
	expect(trial.mapping).toEqual(trial.suggestion?.mapping);
	expect(trial.answer).toMatchObject({ outcome: 'ok', hasPrecipitation: false });
	expect(trial.answer.hours).toHaveLength(72);
	expect(trial.words.slice(0, 3)).toEqual([
		'Hours, in UTC.',
		'Read as the air temperature in °C.',
		'72 hours with a temperature, from 2026-01-20 01:00 to 2026-01-23 00:00 at the lake.'
	]);
	expect(trial.words.join(' ')).toMatch(/snow will be unknown/);
});

test('a mapping that is given is the one that is tried', async () => {
	network.use(http.get(ADDRESS, () => HttpResponse.json({ hourly: { time, temp_c: air } })));
	const mapping = {
		layout: 'columns' as const,
		step: 'hourly' as const,
		time: {
			path: '$.hourly.time',
			form: 'iso' as const,
			zone: 'lake' as const,
			stamp: 'start' as const
		},
		values: { air: { path: '$.hourly.temp_c', unit: '°F' } }
	};
	const trial = await tryIt({ mapping });
	expect(trial.mapping).toEqual(mapping);
	expect(trial.suggestion?.mapping?.values.air?.unit).toBe('°C');
	expect(trial.answer.hours[0]?.air_degC).toBeCloseTo((wave_degC(0) - 32) / 1.8, 9);
	expect(trial.words[0]).toBe('Hours, on the clock of the lake.');
});

test('a table is suggested by the names of its columns', async () => {
	const rows = time.map((at, index) => `${at}Z,${air[index]},0.0,3.1`);
	const csv = ['time,temp_c,precip_mm,windspeed_ms', ...rows].join('\n');
	network.use(http.get(ADDRESS, () => HttpResponse.text(csv)));
	const trial = await tryIt({ format: 'csv' });
	expect(units(trial.mapping)).toMatchObject({ air: 'temp_c °C', precipitation: 'precip_mm mm' });
	expect(trial.answer).toMatchObject({ outcome: 'ok', hasPrecipitation: true });
	expect(trial.answer.hours).toHaveLength(72);
});

test('an answer that is a page is shown as the text that it is', async () => {
	const page = '<html><script>alert(1)</script></html>';
	network.use(http.get(ADDRESS, () => HttpResponse.html(page, { status: 404 })));
	const trial = await tryIt();
	expect(trial.raw).toBe(page);
	expect(trial.status).toBe(404);
	expect(trial.answer.faults.map(({ code }) => code)).toEqual(['notFound']);
	network.use(http.get(ADDRESS, () => HttpResponse.html(page)));
	expect((await tryIt()).answer.faults.map(({ code }) => code)).toEqual(['notJson']);
});

const KEY = 'k3y/with+odd=parts&"quotes"';

test('a service that repeats the key does not make us repeat it', async () => {
	network.use(
		http.get(ADDRESS, ({ request }) => {
			const { searchParams, href } = new URL(request.url);
			const key = searchParams.get('key') ?? '';
			const basic = Buffer.from(key).toString('base64');
			return HttpResponse.json({
				asked: href,
				key,
				basic,
				station_name: key,
				hourly: { time, temp_c: air, [key]: air }
			});
		})
	);
	const trial = await tryIt({ address: `${ADDRESS}?key={key}` }, KEY);
	expect(trial.answer.outcome).toBe('ok');
	const said = text(trial);
	expect(said).toContain('•••');
	for (const part of [
		KEY,
		encodeURIComponent(KEY),
		JSON.stringify(KEY).slice(1, -1),
		Buffer.from(KEY).toString('base64')
	]) {
		expect(said).not.toContain(part);
		expect(said).not.toContain(JSON.stringify(part).slice(1, -1));
	}
	network.use(
		http.get(ADDRESS, ({ request }) =>
			HttpResponse.json({ message: `no such key: ${request.url}` }, { status: 401 })
		)
	);
	const refused = await tryIt({ address: `${ADDRESS}?key={key}` }, KEY);
	expect(refused.answer.faults[0]).toMatchObject({ code: 'keyRefused' });
	expect(text(refused)).not.toContain(encodeURIComponent(KEY));
});

test('no half of a key stands where the text is cut', async () => {
	const padding = 'x'.repeat(65_536 - 12);
	network.use(http.get(ADDRESS, () => HttpResponse.text(`{"${padding}${KEY}${padding}`)));
	const trial = await tryIt({ address: `${ADDRESS}?key={key}` }, KEY);
	expect(trial.isCut).toBe(true);
	expect(trial.raw).not.toContain(KEY.slice(0, 5));
});

test('a key that is missing, and an address that is not allowed', async () => {
	const keyless = await tryIt({ address: `${ADDRESS}?key={key}` });
	expect(keyless.answer).toMatchObject({ calls: 0, outcome: 'failed' });
	const inside = await tryIt({ address: 'http://169.254.169.254/latest/meta-data/' });
	expect(inside.answer.faults.map(({ code }) => code)).toEqual(['addressNotAllowed']);
	expect(inside.raw).toBe('');
});
