import { http, HttpResponse } from 'msw';
import { expect, test } from 'vitest';
import {
	fetchWeather,
	type Ask,
	type FaultCode,
	type Mapping,
	type SourceAnswer
} from '#lib/server/weather/source/contract.ts';
import {
	ask,
	hoursFrom,
	inventedNetwork,
	inventedSource,
	SETTINGS,
	wave_degC
} from '../../../support/weather-service.ts';

const network = inventedNetwork();
const ADDRESS = 'https://weather.example/hours';
const HOUR_s = 3600;

function answering(response: () => Response): void {
	network.use(http.get(ADDRESS, response));
}

function get(changes: Partial<Ask> = {}, mapping: Partial<Mapping> = {}): Promise<SourceAnswer> {
	const source = inventedSource();
	const [call] = source.calls;
	if (!call) throw new Error('the invented source has no call');
	const calls = [{ ...call, mapping: { ...call.mapping, ...mapping } }];
	return fetchWeather({ ...source, calls }, ask(changes), SETTINGS);
}

function codes({ faults }: SourceAnswer): FaultCode[] {
	return faults.map(({ code }) => code);
}

/** Three days of hours up to now, with one column changed. */
const PAST: Partial<Ask> = { part: 'history', from: '2026-01-17', to: '2026-01-20' };
const START = '2026-01-16T23:00Z';
const COUNT = 85;

interface Columns {
	time: (string | number)[];
	air: (number | string | null)[];
	rain: (number | string | null)[];
}

function past(change: (columns: Columns) => Partial<Columns> = () => ({})): Columns {
	const time = hoursFrom(START, COUNT);
	const columns: Columns = {
		time,
		air: time.map((_, at) => wave_degC(at)),
		rain: time.map(() => 0)
	};
	return { ...columns, ...change(columns) };
}

async function read(columns: Columns, mapping: Partial<Mapping> = {}): Promise<SourceAnswer> {
	answering(() => HttpResponse.json({ ...columns }));
	return get(PAST, mapping);
}

test('an answer without a fault has none', async () => {
	const answer = await read(past());
	expect(answer).toMatchObject({ outcome: 'ok', faults: [], calls: 1, hasPrecipitation: true });
	expect(answer.hours).toHaveLength(COUNT);
});

test.each<[status: number, code: FaultCode, remedy: RegExp]>([
	[400, 'refused', /check the address/],
	[401, 'keyRefused', /want a key/],
	[403, 'keyRefused', /contact in the User-Agent/],
	[404, 'notFound', /covers this lake/],
	[410, 'notFound', /check it/],
	[422, 'refused', /check the address/],
	[429, 'tooMany', /lower the calls/],
	[500, 'serverFailed', /asked again later/],
	[503, 'serverFailed', /asked again later/],
	[300, 'refused', /check the address/],
	[206, 'truncated', /only a part/]
])('status %i is told as %s, with what to do', async (status, code, remedy) => {
	answering(() => HttpResponse.json({ reason: 'Parameter lat out of\n range' }, { status }));
	const answer = await get();
	expect(answer).toMatchObject({ outcome: 'failed', hours: [], calls: 1 });
	expect(codes(answer)).toEqual([code]);
	expect(answer.faults[0]?.text).toMatch(remedy);
	if (status >= 400) expect(answer.faults[0]?.text).toContain('“Parameter lat out of range”');
});

test('a service that repeats the key in its reason does not make us repeat it', async () => {
	const key = 'k3y/with+odd=parts';
	network.use(
		http.get(ADDRESS, ({ request }) =>
			HttpResponse.json({ reason: `no access for ${key}: ${request.url}` }, { status: 403 })
		)
	);
	const source = inventedSource();
	const [call] = source.calls;
	if (!call) throw new Error('the invented source has no call');
	const keyed = { ...source, calls: [{ ...call, address: `${ADDRESS}?key={key}` }] };
	const answer = await fetchWeather(keyed, ask({ key }), SETTINGS);
	expect(answer.faults[0]?.text).toMatch(/no access for •••: https:/);
	expect(JSON.stringify(answer)).not.toContain(encodeURIComponent(key));
	expect(answer.faults[0]?.text).toMatch(/Check the key/);
});

test.each([
	['120', 120],
	['Tue, 20 Jan 2026 12:10:00 GMT', 600],
	['soon', null],
	['-5', null],
	['99999999', 604_800]
])('a service that asks to wait (Retry-After: %s) is heard', async (text, expected) => {
	answering(() => new HttpResponse('', { status: 429, headers: { 'retry-after': text } }));
	expect((await get()).retryAfter_s).toBe(expected);
});

test.each([
	[{ 'cache-control': 'public, max-age=900' }, '2026-01-20T12:15:00.000Z'],
	[{ 'cache-control': 'max-age=900', age: '300' }, '2026-01-20T12:10:00.000Z'],
	[{ expires: 'Tue, 20 Jan 2026 13:00:00 GMT' }, '2026-01-20T13:00:00.000Z'],
	[{ 'cache-control': 'no-cache', expires: 'Tue, 20 Jan 2026 13:00:00 GMT' }, undefined],
	[{ expires: '0' }, undefined]
])('until when an answer stays fresh is read from %o', async (headers, expected) => {
	answering(() => HttpResponse.json({ ...past() }, { headers: headers as Record<string, string> }));
	expect((await get(PAST)).freshUntilAt?.toISOString()).toBe(expected);
});

test.each<[what: string, body: string, code: FaultCode, words: RegExp]>([
	['nothing', '', 'empty', /nothing at all/],
	['blanks', ' \n ', 'empty', /nothing at all/],
	['a page', '<!doctype html><html><p>Sign in</p>', 'notJson', /web page/],
	['XML', '<?xml version="1.0"?><wfs/>', 'notJson', /XML/],
	['words', 'No data', 'notJson', /not JSON/],
	['a number', '17', 'notJson', /not JSON/],
	['half of JSON', '{"time": ["2026-01-20T00:00", "2026', 'truncated', /ends in the middle/],
	['JSON with a slip', '{"time": [,]}', 'notJson', /looks like JSON/],
	['JSON with NaN', '{"time": [NaN]}', 'notJson', /looks like JSON/],
	['brackets', '['.repeat(5000), 'tooLarge', /nested/],
	['an empty list', '[]', 'badMapping', /No times/],
	[
		'an error in JSON',
		'{"error": true, "reason": "x"}',
		'badMapping',
		/No times were found at \$\.time/
	],
	['null', 'null', 'notJson', /not JSON/]
])('%s instead of weather is told', async (_, body, code, words) => {
	answering(() => new HttpResponse(body));
	const answer = await get();
	expect(answer).toMatchObject({ outcome: 'failed', hours: [], validators: null });
	expect(answer.faults[0]?.code).toBe(code);
	expect(answer.faults[0]?.text).toMatch(words);
});

test('values that are empty in the middle stay unknown and are counted', async () => {
	const answer = await read(
		past(({ air }) => ({ air: air.map((value, at) => (at >= 30 && at < 34 ? null : value)) }))
	);
	expect(answer.outcome).toBe('ok');
	const nulls = answer.faults.find(({ code }) => code === 'nulls');
	expect(nulls).toMatchObject({ count: 4, at: '2026-01-18 06:00' });
	expect(answer.faults.find(({ code }) => code === 'missing')?.count).toBe(4);
	expect(answer.hours.filter(({ air_degC }) => air_degC === null)).toHaveLength(4);
});

test.each([
	['NaN as text', 'NaN'],
	['a code', -9999],
	['a code as text', '-999.9'],
	['M', 'M']
])('%s stands for a missing value', async (_, code) => {
	const answer = await read(
		past(({ air }) => ({ air: air.map((value, at) => (at === 30 ? code : value)) }))
	);
	expect(answer.hours[30]?.air_degC).toBeNull();
	expect(codes(answer)).toEqual(['missing']);
});

test('impossible values are left out one by one', async () => {
	const answer = await read(
		past(({ air, rain }) => ({
			air: air.map((value, at) => (at === 40 ? 88 : value)),
			rain: rain.map((value, at) => (at === 41 ? -3 : value))
		}))
	);
	expect(answer.outcome).toBe('ok');
	expect(answer.hours[40]?.air_degC).toBeNull();
	expect(answer.hours[41]?.precipitation_kg_m2).toBeNull();
	const impossible = answer.faults.filter(({ code }) => code === 'impossible');
	expect(impossible.map(({ count }) => count)).toEqual([1, 1]);
	expect(impossible[0]?.text).toMatch(/88, which is not from −75 to 60 °C/);
});

test.each<
	[what: string, convert: (value: number) => number, declared: '°C' | '°F' | 'K', hint: RegExp]
>([
	['kelvin as °C', (value) => value + 273.15, '°C', /K\? Choose/],
	['°C as kelvin', (value) => value, 'K', /°C\? Choose/],
	['tenths as °C', (value) => value * 10, '°C', /0\.1 °C\? Choose/],
	['kelvin as °F', (value) => value + 273.15, '°F', /K\? Choose/]
])('%s condemns the answer, and the right unit is named', async (_, convert, unit, hint) => {
	const answer = await read(
		past(({ air }) => ({ air: air.map((value) => convert(Number(value) - 8)) })),
		{ values: { air: { path: '$.air', unit } } }
	);
	expect(answer).toMatchObject({ outcome: 'failed', hours: [] });
	expect(answer.faults[0]?.code).toBe('unitDoubt');
	expect(answer.faults[0]?.text).toMatch(hint);
});

test('°F read as °C shows by summer heat, or by snow that falls in the warmth', async () => {
	const hot = await read(past(({ air }) => ({ air: air.map((value) => 60 + Number(value)) })));
	expect(hot.faults[0]).toMatchObject({ code: 'unitDoubt' });
	expect(hot.faults[0]?.text).toMatch(/°F\? Choose/);
	const snowy = await read(
		past(({ air }) => ({ air: air.map((value) => 28 + Number(value)) })),
		{
			values: {
				air: { path: '$.air', unit: '°C' },
				snowfall: { path: '$.time.length', unit: 'mm water' },
				precipitation: { path: '$.rain', unit: 'mm' }
			}
		}
	);
	expect(codes(snowy)).toEqual(['badMapping']);
	answering(() =>
		HttpResponse.json({
			...past(({ air }) => ({ air: air.map((value) => 28 + Number(value)) })),
			snow: past().time.map((_, at) => (at % 5 === 0 ? 1 : 0))
		})
	);
	const snowing = await get(PAST, {
		values: {
			air: { path: '$.air', unit: '°C' },
			snowfall: { path: '$.snow', unit: 'mm water' }
		}
	});
	expect(snowing).toMatchObject({ outcome: 'failed', hours: [] });
	expect(snowing.faults[0]?.text).toMatch(/Snow falls at more than 8 °C/);
});

test('°C read as °F makes a year without warmth, which is not believed', async () => {
	const time = hoursFrom('2025-02-20T23:00Z', 330 * 24);
	answering(() =>
		HttpResponse.json({ time, air: time.map((_, at) => wave_degC(at % 24) + 15), rain: [] })
	);
	const answer = await get(
		{ part: 'history', from: '2025-02-21', to: '2026-01-16', now: new Date('2026-01-17T12:00Z') },
		{ values: { air: { path: '$.air', unit: '°F' } } }
	);
	expect(answer).toMatchObject({ outcome: 'failed', hours: [] });
	expect(answer.faults[0]?.text).toMatch(/are they °C\?/);
});

test('precipitation in a wrong unit is left out, and the temperature kept', async () => {
	const answer = await read(
		past(({ rain }) => ({ rain: rain.map((_, at) => (at % 4 === 0 ? 1.5 : 0)) })),
		{
			values: {
				air: { path: '$.air', unit: '°C' },
				precipitation: { path: '$.rain', unit: 'm' }
			}
		}
	);
	expect(answer).toMatchObject({ outcome: 'ok', hasPrecipitation: false });
	expect(answer.faults[0]?.text).toMatch(/can't be precipitation in m/);
});

test('the same hour twice: the later value stands', async () => {
	const answer = await read(
		past(({ time, air, rain }) => ({
			time: [...time, time[10] ?? '', time[11] ?? ''],
			air: [...air, -30, null],
			rain: [...rain, 0, 0]
		}))
	);
	expect(codes(answer)).toEqual(['repeated']);
	expect(answer.faults[0]?.count).toBe(2);
	expect(answer.hours).toHaveLength(COUNT);
	expect(answer.hours[10]?.air_degC).toBe(-30);
	expect(answer.hours[11]?.air_degC).toBe(wave_degC(11));
});

test('missing hours are gaps, never filled', async () => {
	const isThere = (at: number) => at < 20 || at >= 25;
	const answer = await read(
		past(({ time, air, rain }) => ({
			time: time.filter((_, at) => isThere(at)),
			air: air.filter((_, at) => isThere(at)),
			rain: rain.filter((_, at) => isThere(at))
		}))
	);
	expect(codes(answer)).toEqual(['missing']);
	expect(answer.faults[0]).toMatchObject({ count: 5, at: '2026-01-17 20:00' });
	expect(answer.hours).toHaveLength(COUNT - 5);
});

test('a record that begins late is missing its first hours', async () => {
	const answer = await read(
		past(({ time, air, rain }) => ({
			time: time.slice(10),
			air: air.slice(10),
			rain: rain.slice(10)
		}))
	);
	expect(answer.faults[0]).toMatchObject({ code: 'missing', count: 10, at: '2026-01-17 00:00' });
});

test('a thermometer that stands still is not believed for longer than its first hour', async () => {
	const answer = await read(
		past(({ air }) => ({ air: air.map((value, at) => (at >= 30 && at < 60 ? -7.3 : value)) }))
	);
	expect(answer.faults[0]).toMatchObject({ code: 'stuck', count: 29, at: '2026-01-18 06:00' });
	expect(answer.faults[0]?.text).toMatch(/still at −7.3 °C/);
	expect(answer.hours[30]?.air_degC).toBe(-7.3);
	expect(answer.hours[31]).toMatchObject({ air_degC: null, precipitation_kg_m2: 0 });
});

test('whole degrees may stand still for a day, but not for two', async () => {
	const still = (until: number) =>
		past(({ air }) => ({
			air: air.map((value, at) => (at >= 10 && at < until ? -7 : Math.round(Number(value))))
		}));
	expect(codes(await read(still(45)))).toEqual([]);
	expect(codes(await read(still(70)))).toEqual(['stuck']);
});

test('a record that has stopped is told with its age', async () => {
	const answer = await read(
		past(({ time, air, rain }) => ({
			time: time.slice(0, 40),
			air: air.slice(0, 40),
			rain: rain.slice(0, 40)
		}))
	);
	expect(codes(answer)).toEqual(['stale']);
	expect(answer.faults[0]?.text).toMatch(/newest observation is 45 hours old/);
});

test('a forecast that was made yesterday morning is stale, and one from the past is none', async () => {
	const time = hoursFrom('2026-01-20T00:00Z', 72);
	const made = (issued: string, count: number) => () =>
		HttpResponse.json({
			issued,
			time: time.slice(0, count),
			air: time.slice(0, count).map((_, at) => wave_degC(at)),
			rain: time.slice(0, count).map(() => 0)
		});
	answering(made('2026-01-20T06:00:00Z', 72));
	const fresh = await get({}, { issued: '$.issued' });
	expect(fresh).toMatchObject({ outcome: 'ok', faults: [] });
	expect(fresh.issuedAt?.toISOString()).toBe('2026-01-20T06:00:00.000Z');
	answering(made('2026-01-19T05:00:00Z', 72));
	const old = await get({}, { issued: '$.issued' });
	expect(codes(old)).toEqual(['stale']);
	expect(old.faults[0]?.text).toMatch(/made 31 hours ago/);
	answering(made('2026-01-20T06:00:00Z', 10));
	const over = await get();
	expect(over).toMatchObject({ outcome: 'failed', hours: [] });
	expect(over.faults[0]?.text).toMatch(/lies in the past/);
});

test('frost that stands still in a forecast is unknown, and warmth that does is left', async () => {
	const time = hoursFrom('2026-01-20T12:00Z', 120);
	const filledUpWith = (last_degC: number) =>
		answering(() =>
			HttpResponse.json({
				time,
				air: time.map((_, at) => (at >= 24 ? last_degC : wave_degC(at))),
				rain: time.map(() => 0)
			})
		);
	filledUpWith(-22.4);
	const cold = await get({ to: '2026-01-25' });
	expect(cold.outcome).toBe('ok');
	expect(cold.faults[0]).toMatchObject({ code: 'stuck', count: 95 });
	expect(cold.faults[0]?.text).toMatch(/forecast stands still in the frost/);
	expect(cold.hours.filter(({ air_degC }) => air_degC === -22.4)).toHaveLength(1);
	filledUpWith(2.4);
	const warm = await get({ to: '2026-01-25' });
	expect(codes(warm)).toEqual([]);
	expect(warm.hours.filter(({ air_degC }) => air_degC === 2.4)).toHaveLength(96);
});

test('a clock that is hours off is told by the warmest time of day', async () => {
	const time = hoursFrom('2026-01-10T00:00Z', 240);
	const question: Partial<Ask> = {
		part: 'history',
		timeZone: 'America/Chicago',
		longitude: -93,
		latitude: 46,
		from: '2026-01-10',
		to: '2026-01-19'
	};
	const warmestAt = (utc: number) => () =>
		HttpResponse.json({
			time,
			air: time.map((_, at) => -8 + 4 * Math.cos(((at - utc) / 24) * 2 * Math.PI)),
			rain: time.map(() => 0)
		});
	answering(warmestAt(20.5));
	expect(codes(await get(question))).toEqual([]);
	// Local clock times that are taken for UTC.
	answering(warmestAt(14.5));
	const off = await get(question);
	expect(off.outcome).toBe('ok');
	expect(off.faults[0]).toMatchObject({ code: 'clockDoubt' });
	expect(off.faults[0]?.text).toMatch(/6 hours off/);
});

test('observations of the future are left out and told', async () => {
	const time = hoursFrom('2026-01-19T23:00Z', 20);
	const source = inventedSource();
	const [call] = source.calls;
	if (!call) throw new Error('the invented source has no call');
	answering(() =>
		HttpResponse.json({ time, air: time.map((_, at) => wave_degC(at)), rain: time.map(() => 0) })
	);
	const calls = [{ ...call, part: 'history' as const }];
	const answer = await fetchWeather({ ...source, calls }, ask({ part: 'history' }), SETTINGS);
	expect(answer.outcome).toBe('ok');
	expect(answer.hours.at(-1)?.at_s).toBe(Date.UTC(2026, 0, 20, 11) / 1000);
	expect(codes(answer)).toEqual(['clockDoubt']);
});

test('columns that do not fit their times are left out, not shifted', async () => {
	const answer = await read(past(({ rain }) => ({ rain: rain.slice(1) })));
	expect(answer).toMatchObject({ outcome: 'ok', hasPrecipitation: false });
	expect(codes(answer)).toEqual(['badMapping']);
	expect(answer.faults[0]?.text).toMatch(/84 values beside 85 times/);
});

test('what is no number and what is no time is told with its text', async () => {
	const answer = await read(
		past(({ time, air }) => ({
			time: time.map((text, at) => (at === 5 ? 'yesterday' : text)),
			air: air.map((value, at) => (at === 6 ? 'cold' : value))
		}))
	);
	expect(answer.outcome).toBe('ok');
	const texts = answer.faults.filter(({ code }) => code === 'badMapping').map(({ text }) => text);
	expect(texts.some((text) => text.includes('"yesterday"'))).toBe(true);
	expect(texts.some((text) => text.includes('"cold"'))).toBe(true);
});

test('more times than can be read at once are left', async () => {
	const time = Array.from({ length: 60_001 }, (_, at) => at % 9);
	answering(() => HttpResponse.json({ time, air: time, rain: time }));
	const answer = await get();
	expect(answer.outcome).toBe('failed');
	expect(answer.faults[0]?.text).toMatch(/60,001 times/);
});

test('an answer over the limit is left unread', async () => {
	answering(() => HttpResponse.json({ time: ['x'.repeat(1_000_000)] }));
	expect(codes(await get())).toEqual(['tooLarge']);
});

test('what is missing in the set-up is told before anything is asked', async () => {
	const source = inventedSource({ needsKey: true, wantsContact: true });
	const keyless = await fetchWeather(source, ask(), SETTINGS);
	expect(keyless).toMatchObject({ outcome: 'failed', calls: 0 });
	expect(keyless.faults[0]?.text).toMatch(/needs a key/);
	const unreachable = await fetchWeather(source, ask({ key: 'k', contact: null }), SETTINGS);
	expect(unreachable.faults[0]?.text).toMatch(/FROSTLEDGER_CONTACT/);
	const [call] = source.calls;
	if (!call) throw new Error('the invented source has no call');
	const inHeader = { ...source, calls: [{ ...call, headers: { 'x-key': '{key}' } }] };
	const broken = await fetchWeather(inHeader, ask({ key: 'two\nlines' }), SETTINGS);
	expect(broken).toMatchObject({ outcome: 'failed', calls: 0 });
	expect(broken.faults[0]?.text).toMatch(/copy it again/);
	const forecastOnly = inventedSource();
	const calls = [{ ...call, part: 'forecast' as const, reach: { ahead_d: 3 } }];
	const noPast = await fetchWeather({ ...forecastOnly, calls }, ask({ part: 'history' }), SETTINGS);
	expect(noPast.faults[0]).toMatchObject({ code: 'notConfigured' });
	const tooFar = ask({ from: '2026-02-01', to: '2026-02-05' });
	const beyond = await fetchWeather({ ...forecastOnly, calls }, tooFar, SETTINGS);
	expect(beyond).toMatchObject({ outcome: 'failed', calls: 0 });
});

test('a long span is asked in parts and joined; a part that fails keeps the others', async () => {
	const asked: string[] = [];
	network.use(
		http.get(ADDRESS, ({ request }) => {
			const { searchParams } = new URL(request.url);
			const from = searchParams.get('from') ?? '';
			asked.push(`${from} ${searchParams.get('to')}`);
			if (asked.length === 3) return new HttpResponse(null, { status: 500 });
			const time = hoursFrom(`${from}T00:00Z`, 48);
			return HttpResponse.json({
				time,
				air: time.map((_, at) => wave_degC(at)),
				rain: time.map(() => 0)
			});
		})
	);
	const source = inventedSource();
	const [call] = source.calls;
	if (!call) throw new Error('the invented source has no call');
	const question = ask({
		part: 'history',
		timeZone: 'Etc/UTC',
		from: '2026-01-10',
		to: '2026-01-15'
	});
	const calls = [{ ...call, chunk_d: 2 }];
	const answer = await fetchWeather({ ...source, calls }, question, SETTINGS);
	expect(asked).toEqual([
		'2026-01-10 2026-01-11',
		'2026-01-12 2026-01-13',
		'2026-01-14 2026-01-15'
	]);
	expect(answer.outcome).toBe('ok');
	expect(answer.hours).toHaveLength(96);
	expect(codes(answer)).toEqual(['serverFailed', 'stale']);
	expect(answer.hours.at(-1)?.at_s).toBe(Date.UTC(2026, 0, 13, 23) / 1000);
	expect(answer.hours[1]?.at_s).toBe((answer.hours[0]?.at_s ?? 0) + HOUR_s);
});

test.each([204, 205])('status %i is no weather, and says so', async (status) => {
	answering(() => new HttpResponse(null, { status }));
	const answer = await get();
	expect(answer.outcome).toBe('failed');
	expect(codes(answer)).toEqual(['empty']);
	expect(answer.faults[0]?.text).toMatch(/check the days/);
});

test('status 203 is used, and told plainly', async () => {
	answering(() => HttpResponse.json({ ...past() }, { status: 203 }));
	const answer = await get(PAST);
	expect(answer).toMatchObject({ outcome: 'ok', faults: [{ code: 'deprecated' }] });
	expect(answer.faults[0]?.text).toMatch(/status 203.*documentation/);
});

test('frost out of all bounds in a forecast is unknown, and warmth that is counts', async () => {
	const time = hoursFrom('2026-01-20T12:00Z', 120);
	const withHour = (odd_degC: number) =>
		answering(() =>
			HttpResponse.json({
				time,
				air: time.map((_, at) => (at === 30 ? odd_degC : wave_degC(at))),
				rain: time.map(() => 0)
			})
		);
	withHour(-73);
	const cold = await get({ to: '2026-01-25' });
	expect(cold.outcome).toBe('ok');
	expect(cold.faults[0]).toMatchObject({ code: 'impossible', count: 1 });
	expect(cold.faults[0]?.text).toMatch(
		/^1 hour is colder by more than 30 °C than the hours beside it, the first −73 °C at 2026-01-21 19:00/
	);
	expect(cold.hours[30]?.air_degC).toBeNull();
	expect(cold.hours.filter(({ air_degC }) => air_degC === null)).toHaveLength(1);
	withHour(45);
	const warm = await get({ to: '2026-01-25' });
	expect(warm.faults[0]?.text).toMatch(/1 hour is warmer by more than 30 °C .* it counts/);
	expect(warm.hours[30]?.air_degC).toBe(45);
});
