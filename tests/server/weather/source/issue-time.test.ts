import { http, HttpResponse } from 'msw';
import { expect, test } from 'vitest';
import {
	fetchWeather,
	type Ask,
	type Mapping,
	type WeatherSource
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
const NOW = '2026-01-20T12:00:00.000Z';

/** Four days of hours about noon of 20 January UTC, and when they are said to be made. */
interface Answer {
	issued?: string | number | null;
	lastModified?: string;
	sent?: string;
}

function answering({ issued, lastModified, sent }: Answer): void {
	const time = hoursFrom('2026-01-18T23:00Z', 96);
	const body = {
		...(issued === undefined ? {} : { issued }),
		time,
		air: time.map((_, at) => wave_degC(at)),
		rain: time.map(() => 0)
	};
	const headers: Record<string, string> = {
		...(lastModified === undefined ? {} : { 'last-modified': lastModified }),
		...(sent === undefined ? {} : { date: sent })
	};
	network.use(
		http.get('https://weather.example/hours', () => HttpResponse.json(body, { headers }))
	);
}

async function get(
	answer: Answer,
	changes: Partial<Ask> = {},
	{ part = 'both', ...mapping }: Partial<Mapping> & { part?: 'both' | 'history' } = {}
) {
	answering(answer);
	const [call] = inventedSource().calls;
	if (!call) throw new Error('the invented source has no call');
	const calls: WeatherSource['calls'] = [
		{ ...call, part, mapping: { ...call.mapping, ...mapping } }
	];
	const got = await fetchWeather({ ...inventedSource(), calls }, ask(changes), SETTINGS);
	return { ...got, codes: got.faults.map(({ code }) => code) };
}

const ISSUED = { issued: '$.issued' };
const PAST: Partial<Ask> = { part: 'history', from: '2026-01-19', to: '2026-01-20' };
const last = ({ hours }: { hours: { at_s: number }[] }) =>
	new Date((hours.at(-1)?.at_s ?? NaN) * 1000).toISOString().slice(0, 16);

test('what was forecast when an answer was made is no observation, however late it is asked', async () => {
	expect(last(await get({ issued: '2026-01-20T10:00:00Z' }, PAST, ISSUED))).toBe(
		'2026-01-20T09:00'
	);
	const stuck = await get({ issued: '2026-01-19T18:00:00Z' }, PAST, ISSUED);
	expect(last(stuck)).toBe('2026-01-19T17:00');
	expect(stuck.codes).toContain('stale');
});

test('of an answer that tells past and future its Last-Modified ends the past', async () => {
	const lastModified = 'Tue, 20 Jan 2026 05:00:00 GMT';
	expect(last(await get({ lastModified }, PAST))).toBe('2026-01-20T04:00');
	// A record of observations grows at its end, and servers date such files as they like.
	expect(last(await get({ lastModified }, PAST, { part: 'history' }))).toBe('2026-01-20T11:00');
});

test('a clock that is off moves the time of issue along with the others', async () => {
	// Clock times of a zone five hours behind, said to be UTC: all seems to be five hours older.
	const off = await get({ issued: '2026-01-20T05:00' }, PAST, ISSUED);
	expect(last(off)).toBe('2026-01-20T04:00');
});

test('a time of issue without an offset is by the clock of the other times', async () => {
	const zone = { name: 'America/New_York' };
	const time = { path: '$.time', form: 'iso', zone, stamp: 'start' } as const;
	const got = await get({ issued: '2026-01-20 05:00' }, {}, { ...ISSUED, time });
	expect(got.issuedAt?.toISOString()).toBe('2026-01-20T10:00:00.000Z');
	const offset = await get({ issued: '2026-01-20 05:00+01:00' }, {}, { ...ISSUED, time });
	expect(offset.issuedAt?.toISOString()).toBe('2026-01-20T04:00:00.000Z');
});

test.each([
	[1768892400, '2026-01-20T07:00:00.000Z'],
	['1768892400000', '2026-01-20T07:00:00.000Z'],
	['20260120T07', '2026-01-20T07:00:00.000Z'],
	['2026-01-20', '2026-01-20T00:00:00.000Z']
])('the time of issue %s is read', async (issued, expected) => {
	const got = await get({ issued }, {}, ISSUED);
	expect(got.issuedAt?.toISOString()).toBe(expected);
	expect(got.isIssueTold).toBe(true);
});

test('a forecast made in the future counts as made now, and its clock is doubted', async () => {
	const got = await get({ issued: '2026-01-20T18:00:00Z' }, {}, ISSUED);
	expect(got.issuedAt?.toISOString()).toBe(NOW);
	expect(got.codes).toEqual(['clockDoubt']);
	expect(got.faults[0]?.text).toMatch(/6 hours from now.*time zone/);
	const nearly = await get({ issued: '2026-01-20T12:05:00Z' }, {}, ISSUED);
	expect(nearly).toMatchObject({ codes: [], issuedAt: new Date(NOW) });
	const past = await get({ issued: '2026-01-20T18:00:00Z' }, PAST, ISSUED);
	expect(last(past)).toBe('2026-01-20T11:00');
});

test.each([
	['soon', /"soon" is no time/],
	[null, /nothing stands there/],
	['03/04/2026 10:00', /is no time/]
])('a time of issue that says %s is told as not understood', async (issued, words) => {
	const got = await get({ issued }, {}, ISSUED);
	expect(got).toMatchObject({ outcome: 'ok', isIssueTold: false, codes: ['badMapping'] });
	expect(got.faults[0]?.text).toMatch(/not understood at \$\.issued/);
	expect(got.faults[0]?.text).toMatch(words);
});

test('without a time of issue the older of now and Last-Modified counts', async () => {
	const old = await get({ lastModified: 'Mon, 19 Jan 2026 06:00:00 GMT' });
	expect(old.issuedAt?.toISOString()).toBe('2026-01-19T06:00:00.000Z');
	expect(old).toMatchObject({ isIssueTold: false, codes: ['stale'] });
	const ahead = await get({ lastModified: 'Wed, 21 Jan 2026 06:00:00 GMT' });
	expect(ahead.issuedAt?.toISOString()).toBe(NOW);
	expect((await get({})).issuedAt?.toISOString()).toBe(NOW);
});

test('by a clock that is ahead nothing is observed that was forecast when it was sent', async () => {
	const sent = 'Mon, 19 Jan 2026 10:00:00 GMT';
	const past = await get({ sent }, PAST);
	expect(last(past)).toBe('2026-01-19T09:00');
	expect(past.codes).toContain('clockDoubt');
	expect(past.faults.find(({ code }) => code === 'clockDoubt')?.text).toMatch(
		/sent this answer 26 hours ago/
	);
	const forecast = await get({ sent });
	expect(forecast.issuedAt?.toISOString()).toBe('2026-01-19T10:00:00.000Z');
	expect(forecast.codes).toContain('stale');
	const told = await get({ sent, issued: '2026-01-20T06:00:00Z' }, {}, ISSUED);
	expect(told.issuedAt?.toISOString()).toBe('2026-01-19T10:00:00.000Z');
});

test('a clock that is behind is told of, and one of a few minutes or of another year is not', async () => {
	const behind = await get({ sent: 'Thu, 22 Jan 2026 12:00:00 GMT' }, PAST);
	expect(last(behind)).toBe('2026-01-20T11:00');
	expect(behind.faults.find(({ code }) => code === 'clockDoubt')?.text).toMatch(
		/it is 48 hours later/
	);
	const slightly = await get({ sent: 'Tue, 20 Jan 2026 12:20:00 GMT' }, PAST);
	expect(slightly.faults.find(({ code }) => code === 'clockDoubt')?.text).toMatch(
		/it is 20 minutes later/
	);
	for (const sent of [
		'Tue, 20 Jan 2026 11:50:00 GMT',
		'Thu, 01 Jan 1970 00:10:00 GMT',
		'no date'
	]) {
		expect((await get({ sent }, PAST)).codes).not.toContain('clockDoubt');
	}
});
