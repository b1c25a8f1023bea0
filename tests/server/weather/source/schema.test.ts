import { query } from 'jsonpath-rfc9535';
import { expect, test } from 'vitest';
import { weatherSource, type WeatherSource } from '#lib/server/weather/source/contract.ts';
import { pathProblem } from '#lib/server/weather/source/path-rules.ts';
import { spansOf } from '#lib/server/weather/source/spans.ts';
import {
	fillAddress,
	headerProblem,
	templateProblem
} from '#lib/server/weather/source/template.ts';
import { ask, inventedSource } from '../../../support/weather-service.ts';

test.each([
	'$',
	'$.hourly.time',
	'$.hourly.time[*]',
	"$['hourly']['temperature_2m'][0:48]",
	"$.series[?@.name == 't' && @.level <= 2].values[0]",
	'$..temperature',
	'$.a[?length(@.name) > 2]',
	'$.a[?count(@.values[*]) == 1].values[0]'
])('%s may be asked', (path) => {
	expect(pathProblem(path)).toBeNull();
});

test.each([
	["$.a[?match(@.b, '(a+)+$')]", /match\(\)/],
	["$.a[?!search(@.b, 'x') || @.c]", /search\(\)/],
	["$.a[?@.c[?search(@.d, 'x')]]", /search\(\)/],
	['$..a..b', /more than once/],
	['$..a[0,1]', /more than once/],
	['$[0,1][0,1]', /more than once/],
	['$..a[?@..b]', /more than once/],
	['$.a[?@.b == $.c]', /whole answer/],
	['$.a[?$.b[*]]', /whole answer/],
	['$.a[?count($..*) > 1]', /whole answer/],
	['temperature', /not a JSONPath/],
	['$.', /not a JSONPath/],
	['$.a[?', /not a JSONPath/],
	['', /not a JSONPath/]
])('%s may not be asked', (path, why) => {
	expect(pathProblem(path)).toMatch(why);
});

test('the dearest path that may be asked is done with a large answer in no time', () => {
	const rows = Array.from({ length: 20_000 }, (_, at) => ({ name: 't', values: [at, at] }));
	const start = performance.now();
	const path = '$.a[?count(@.values[*]) == 2 && @.name == "t"].values[0]';
	expect(pathProblem(path)).toBeNull();
	expect(query({ a: rows }, path)).toHaveLength(20_000);
	expect(performance.now() - start).toBeLessThan(2000);
});

test.each([
	['https://x.example/{latitude}/{longitude}?a={from:yyyyMMdd}&b={to:epoch_ms}&k={key}', null],
	['http://x.example/{station}?z={timeZone}&e={elevation}&t={from:iso}', null],
	['{next}?limit=1', null],
	['https://x.example/{lat}', /\{lat\} is not known/],
	['https://x.example/{from:yyyy-MM-dd;rm}', /not known/],
	['https://x.example/{latitude:2}', /not known/],
	['https://{key}.example/', /host in full/],
	['https://{next}/', /host in full/],
	['https://a:b@x.example/', /user name or password/],
	['ftp://x.example/', /must begin with https/],
	['javascript:alert(1)', /must begin with https/],
	['https://x.example/a b', /blank/],
	['https://x.example/{', /brace/],
	['', /must begin with https/]
])('the address %s', (address, problem) => {
	if (problem === null) expect(templateProblem(address)).toBeNull();
	else expect(templateProblem(address)).toMatch(problem);
});

test.each([
	['x-api-key', '{key}', null],
	['Authorization', 'Bearer {key}', null],
	['accept', 'application/geo+json', null],
	['user-agent', 'somebody else', /set by this app/],
	['Host', 'x.example', /set by this app/],
	['If-None-Match', '"a"', /set by this app/],
	['cookie', 'a=b', /set by this app/],
	['x y', 'a', /not the name/],
	['x-y', 'a\r\nx-z: b', /one line/],
	['x-y', 'é', /plain text/],
	['x-y', '{latitude}', /only \{key\}/]
])('the header %s: %s', (name, value, problem) => {
	if (problem === null) expect(headerProblem(name, value)).toBeNull();
	else expect(headerProblem(name, value)).toMatch(problem);
});

test('what is filled in can not become another part of the address', () => {
	const question = ask({
		latitude: -0.00001,
		longitude: 179.123456,
		elevation_m: null,
		station: '../admin?x=1#',
		key: 'a&b=c'
	});
	const span = { from: '2026-03-29', to: '2026-03-30', next: null };
	const fill = (template: string) => fillAddress(template, question, span);
	expect(fill('https://x.example/{latitude},{longitude}/{elevation}')).toBe(
		'https://x.example/0,179.1235/'
	);
	expect(new URL(fill('https://x.example/s/{station}?k={key}')).pathname).toBe(
		'/s/..%2Fadmin%3Fx%3D1%23'
	);
	expect(new URL(fill('https://x.example/?k={key}')).searchParams.get('k')).toBe('a&b=c');
	expect(fill('https://x.example/{from}/{to}')).toBe('https://x.example/2026-03-29/2026-03-30');
	expect(fill('https://x.example/{from:dd.MM.yyyy}')).toBe('https://x.example/29.03.2026');
	// The day of the clock change has 23 hours.
	expect(decodeURIComponent(fill('{from:iso} {to:iso}'))).toBe(
		'2026-03-28T23:00:00Z 2026-03-30T22:00:00Z'
	);
	expect(fill('{from:epoch_s}')).toBe(String(Date.UTC(2026, 2, 28, 23) / 1000));
	expect(fill('https://x.example/?lat=1&alt={elevation}')).toBe('https://x.example/?lat=1');
	expect(fill('https://x.example/?alt={elevation}&lat=1')).toBe('https://x.example/?lat=1');
	expect(fill('https://x.example/?alt={elevation}')).toBe('https://x.example/');
	const next = { ...span, next: 'https://y.example/a?b=c' };
	expect(fillAddress('{next}&n=1', question, next)).toBe('https://y.example/a?b=c&n=1');
	expect(fillAddress('https://x.example/?s={next}', question, next)).toBe(
		'https://x.example/?s=https%3A%2F%2Fy.example%2Fa%3Fb%3Dc'
	);
});

function problemsOf(change: (source: Record<string, unknown>) => void): string {
	const source: Record<string, unknown> = JSON.parse(JSON.stringify(inventedSource()));
	change(source);
	const read = weatherSource.safeParse(source);
	return read.success ? '' : read.error.issues.map(({ message }) => message).join('; ');
}

function changeMapping(change: Record<string, unknown>): string {
	return problemsOf((source) => {
		const [call] = source['calls'] as { mapping: object }[];
		if (call) Object.assign(call.mapping, change);
	});
}

test('a source with a slip in it is refused with a sentence', () => {
	expect(problemsOf(() => undefined)).toBe('');
	expect(problemsOf((source) => Object.assign(source, { key: 's3cret' }))).toMatch(/key/);
	expect(problemsOf((source) => Object.assign(source, { id: 'Has Blanks' }))).toMatch(/hyphens/);
	expect(problemsOf((source) => Object.assign(source, { homepage: 'javascript:x' }))).not.toBe('');
	expect(changeMapping({ values: {} })).toMatch(/temperature is what makes ice/);
	expect(changeMapping({ layout: 'rows' })).toMatch(/where the rows are/);
	expect(changeMapping({ rows: '$.x[*]' })).toMatch(/layout "rows" only/);
	expect(changeMapping({ layout: 'rows', rows: '$..x' })).toMatch(/without \.\./);
	expect(changeMapping({ layout: 'csv' })).toMatch(/format "csv"/);
	expect(changeMapping({ values: { air: { path: '$.a', unit: 'furlong' } } })).not.toBe('');
	expect(changeMapping({ values: { air: { path: "$[?match(@.a,'b')]", unit: 'K' } } })).toMatch(
		/match/
	);
	const instant = { path: '$.t', form: 'iso', zone: 'utc', stamp: 'instant' };
	expect(changeMapping({ time: instant })).toMatch(/start or the end/);
	expect(changeMapping({ time: { ...instant, zone: { name: 'Middle/Earth' } } })).toMatch(
		/not a time zone/
	);
	const rainAlone = {
		air: { path: '$.a', unit: '°C' },
		precipitation: { path: '$.r', unit: 'mm rain' }
	};
	expect(changeMapping({ values: rainAlone })).toMatch(/needs the snowfall/);
	expect(
		problemsOf((source) => {
			const [call] = source['calls'] as object[];
			Object.assign(call ?? {}, { address: '{next}' });
		})
	).toMatch(/needs a call before it/);
});

test('spans keep to what a source reaches and to the longest that it answers', () => {
	const source: WeatherSource = inventedSource();
	const [call] = source.calls;
	if (!call) throw new Error('the invented source has no call');
	const limited = { ...source, calls: [{ ...call, chunk_d: 3, reach: { back_d: 5, ahead_d: 2 } }] };
	const asked = { from: '2026-01-01', to: '2026-01-31' };
	expect(spansOf(limited, 'history', asked, '2026-01-20')).toEqual([
		{ from: '2026-01-15', to: '2026-01-17' },
		{ from: '2026-01-18', to: '2026-01-20' },
		{ from: '2026-01-21', to: '2026-01-22' }
	]);
	expect(spansOf(source, 'history', asked, '2026-01-20')).toEqual([asked]);
	expect(spansOf({ ...source, calls: [] }, 'history', asked, '2026-01-20')).toEqual([]);
});
