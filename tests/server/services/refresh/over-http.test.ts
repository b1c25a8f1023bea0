import { http, HttpResponse } from 'msw';
import { expect, test } from 'vitest';
import type { Context } from '../../../../src/lib/server/context.ts';
import { whenIdle } from '../../../../src/lib/server/services/refresh/queue.ts';
import {
	refreshState,
	startRefresh
} from '../../../../src/lib/server/services/refresh/refresh-lake.ts';
import { newSource } from '../../../../src/lib/server/services/sources/input.ts';
import { listLog } from '../../../../src/lib/server/services/sources/log.ts';
import { createSource, getSource } from '../../../../src/lib/server/services/sources/sources.ts';
import { lakeView } from '../../../../src/lib/server/services/lake-view.ts';
import { listWeather } from '../../../../src/lib/server/services/weather-csv.ts';
import { saveSiteWinter, winterInput } from '../../../../src/lib/server/services/winters.ts';
import { freshContext, inventedLake } from '../../../support/fresh-context.ts';
import { inventedSource, orderOf } from '../../../support/invented-source.ts';
import { inventedNetwork } from '../../../support/weather-service.ts';

const network = inventedNetwork();
const KEY = 'kingfisher-4711';
const NOW = '2027-01-20T12:20:00Z';

/** A lake that froze over on 5 January, with a service that wants its key in a header. */
async function lake() {
	const fresh = await freshContext(NOW);
	let now = new Date(NOW);
	const ctx: Context = { ...fresh, now: () => now };
	ctx.weather.contact = 'keeper@lake.example';
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	const record = winterInput.parse({ freezeUpOn: '2027-01-05' });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...record });
	const source = inventedSource({ needsKey: true, limits: { perDay: 1000, minInterval_min: 0 } });
	const calls = source.calls.map((call) => ({ ...call, headers: { 'x-key': '{key}' } }));
	await createSource(ctx, newSource.parse({ source: { ...source, calls }, key: KEY }));
	await orderOf(ctx, id, ['csv', 'invented-weather']);
	const refresh = async (at = NOW) => {
		now = new Date(at);
		await startRefresh(ctx, id);
		await whenIdle(ctx);
		const [progress] = (await refreshState(ctx, id)).sources;
		if (!progress) throw new Error('the lake has no source');
		return progress;
	};
	return { ctx, id, refresh };
}

/** A day's wave about a temperature, for the hours from one day to before an instant. */
function hourly(from: string, end_ms: number, mean_degC: number) {
	const count = (end_ms - Date.parse(from)) / 3_600_000;
	const at = (hour: number) => new Date(Date.parse(from) + hour * 3_600_000).toISOString();
	const air = (hour: number) => mean_degC + 3 * Math.cos((2 * Math.PI * (hour - 14)) / 24);
	return {
		hourly: {
			time: Array.from({ length: count }, (_, hour) => at(hour).slice(0, 16)),
			air: Array.from({ length: count }, (_, hour) => Number(air(hour).toFixed(1))),
			rain: Array.from({ length: count }, () => 0.1)
		}
	};
}

/** Answers as one that has measured until an hour of the day. */
function answering(mean_degC: number, headers: Record<string, string> = {}, until = '12') {
	return ({ request }: { request: Request }) => {
		const { searchParams } = new URL(request.url);
		const [from, to] = [searchParams.get('from') ?? '', searchParams.get('to') ?? ''];
		const end_ms = Date.parse(to) + 86_400_000;
		const isPast = request.url.startsWith(PAST);
		const told_ms = isPast ? Math.min(end_ms, Date.parse(`2027-01-20T${until}:00:00Z`)) : end_ms;
		return HttpResponse.json(hourly(from, told_ms, mean_degC), { headers });
	};
}

const PAST = 'https://weather.invalid/past';
const AHEAD = 'https://weather.invalid/ahead';

test('history and forecast come over the network, with the key and the contact', async () => {
	const { ctx, id, refresh } = await lake();
	const seen: (string | null)[][] = [];
	const answer = answering(-8);
	network.use(
		http.get('https://weather.invalid/*', ({ request }) => {
			seen.push([request.headers.get('x-key'), request.headers.get('user-agent')]);
			return answer({ request });
		})
	);
	expect(await refresh()).toMatchObject({ status: 'done', doneDays: 19, sentences: [] });
	expect(new Set(seen.flat())).toEqual(new Set([KEY, 'Frostledger/0.1 (keeper@lake.example)']));
	const days = await listWeather(ctx, id);
	expect(days.at(0)).toMatchObject({ on: '2027-01-02', air_degC: expect.closeTo(-8, 1) });
	const { upkeep } = await lakeView(ctx, id, { until: '2027-02-01' });
	expect(upkeep).toMatchObject({ isForecastUsed: true, lastObservedAge_h: 0, forecastAge_h: 0 });
	expect((await getSource(ctx, 'invented-weather')).callsToday).toBe(seen.length);
});

test('an unchanged forecast is asked for by its ETag, and stays as old as it is', async () => {
	const { ctx, id, refresh } = await lake();
	network.use(http.get(PAST, answering(-8)), http.get(AHEAD, answering(-8, { etag: '"a1"' })));
	await refresh();
	const conditions: (string | null)[] = [];
	network.use(
		http.get(AHEAD, ({ request }) => {
			conditions.push(request.headers.get('if-none-match'));
			return new HttpResponse(null, { status: 304 });
		})
	);
	expect(await refresh('2027-01-20T18:20:00Z')).toMatchObject({ status: 'done' });
	expect(conditions).toEqual(['"a1"']);
	const { upkeep } = await lakeView(ctx, id, { until: '2027-02-01' });
	expect(upkeep).toMatchObject({ forecastAge_h: 6, isForecastUsed: true });
});

test.each([
	['an error of the server', () => new HttpResponse('no', { status: 503 }), 'serverFailed'],
	['a page instead of data', () => HttpResponse.html('<html>sign in</html>'), 'notJson'],
	['an answer that breaks off', () => HttpResponse.text('{"hourly":{"time":["20'), 'truncated'],
	['a refused key', () => new HttpResponse(null, { status: 401 }), 'keyRefused'],
	['nothing at all', () => new HttpResponse(null, { status: 200 }), 'empty'],
	['a network that is down', () => HttpResponse.error(), 'unreachable']
])(
	'%s is logged in a sentence without the key, and the estimate goes on',
	async (_, broken, code) => {
		const { ctx, id, refresh } = await lake();
		network.use(http.get('https://weather.invalid/*', answering(-8)));
		await refresh();
		const before = await lakeView(ctx, id);
		network.use(http.get('https://weather.invalid/*', broken));
		const progress = await refresh('2027-01-20T14:20:00Z');
		expect(progress.status).toBe('failed');
		expect(progress.sentences[0]).toMatch(/\.$/);
		const [entry] = await listLog(ctx, { onlyFaults: true });
		expect(entry?.faults.map((fault) => fault.code)).toContain(code);
		expect(JSON.stringify(await listLog(ctx))).not.toContain(KEY);
		const after = await lakeView(ctx, id);
		expect(after.outlook?.today).toEqual(before.outlook?.today);
		expect(after.upkeep).toMatchObject({ lastObservedAge_h: 2, forecastAge_h: 2 });
		network.use(http.get('https://weather.invalid/*', answering(-8, {}, '15')));
		expect(await refresh('2027-01-20T15:20:00Z')).toMatchObject({ status: 'done' });
		expect((await lakeView(ctx, id)).upkeep).toMatchObject({ lastObservedAge_h: 0 });
	}
);

test('429 with Retry-After keeps everybody waiting', async () => {
	const { ctx, refresh } = await lake();
	let calls = 0;
	network.use(
		http.get('https://weather.invalid/*', () => {
			calls++;
			return new HttpResponse(null, { status: 429, headers: { 'retry-after': '3600' } });
		})
	);
	expect(await refresh()).toMatchObject({ status: 'failed' });
	expect(calls).toBe(1);
	expect(await refresh('2027-01-20T13:00:00Z')).toMatchObject({ status: 'notAsked' });
	expect(calls).toBe(1);
	expect((await getSource(ctx, 'invented-weather')).waitsUntilAt).toEqual(
		new Date('2027-01-20T13:20:00Z')
	);
});

test('an answer that says how long it holds is left alone so long', async () => {
	const { refresh } = await lake();
	let calls = 0;
	const answer = answering(-8, { 'cache-control': 'max-age=3600' });
	network.use(
		http.get('https://weather.invalid/*', (info) => {
			calls++;
			return answer(info);
		})
	);
	await refresh();
	const first = calls;
	expect(await refresh('2027-01-20T13:00:00Z')).toMatchObject({ status: 'notAsked' });
	expect(calls).toBe(first);
	expect(await refresh('2027-01-20T13:30:00Z')).toMatchObject({ status: 'done' });
	expect(calls).toBeGreaterThan(first);
});
