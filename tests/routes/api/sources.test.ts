import { sql } from 'kysely';
import { expect, test } from 'vitest';
import { whenIdle } from '../../../src/lib/server/services/refresh/queue.ts';
import { apiOf } from '../../support/api.ts';
import { inventedLake } from '../../support/fresh-context.ts';
import {
	answered,
	contextWithService,
	hoursFrom,
	inventedSource,
	measuredAsColdAs
} from '../../support/invented-source.ts';

const KEY = 'kingfisher-4711';

async function api() {
	const { ctx, service, setNow } = await contextWithService('2027-01-20T12:20:00Z');
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC', elevation_m: 100 });
	const call = apiOf(ctx);
	const ask = async (method: string, path: string, body?: unknown) => {
		const response = await call(method, `/api/v1${path}`, body === undefined ? {} : { body });
		const text = await response.text();
		return { status: response.status, headers: response.headers, text, body: parsed(text) };
	};
	return { ctx, service, setNow, lake: id, ask };
}

function parsed(text: string) {
	return text === '' ? null : (JSON.parse(text) as Record<string, unknown>);
}

test('a source is added, changed, exported, deleted, and taken in again as it was exported', async () => {
	const { ask } = await api();
	const made = await ask('POST', '/sources', { source: inventedSource() });
	expect(made.status).toBe(201);
	expect(made.headers.get('location')).toBe('/api/v1/sources/invented-weather');
	expect(made.body).toMatchObject({ isOn: true, hasKey: false, failures: 0, callsToday: 0 });
	const changed = await ask('PATCH', '/sources/invented-weather', { isOn: false });
	expect(changed.body).toMatchObject({ isOn: false, name: 'Invented Weather' });
	const exported = await ask('GET', '/sources/invented-weather/export');
	expect(exported.headers.get('content-disposition')).toContain('invented-weather.json');
	expect(exported.body).toEqual(inventedSource());
	expect((await ask('DELETE', '/sources/invented-weather')).status).toBe(204);
	expect((await ask('GET', '/sources')).body).toEqual([]);
	expect((await ask('GET', '/sources/invented-weather')).status).toBe(404);
	const restored = await ask('POST', '/sources/invented-weather/restore');
	expect(restored).toMatchObject({ status: 200, body: { id: 'invented-weather', isOn: false } });
	expect((await ask('POST', '/sources/nobody/restore')).status).toBe(404);
	expect((await ask('DELETE', '/sources/invented-weather')).status).toBe(204);
	const again = await ask('POST', '/sources', exported.body);
	expect(again.status).toBe(201);
	expect(again.body?.['id']).toMatch(/^invented-weather-\w{6}$/);
});

test('a source that cannot be is refused at its field', async () => {
	const { ask } = await api();
	const wrong = inventedSource();
	const refused = await ask('POST', '/sources', { source: { ...wrong, limits: { perDay: -1 } } });
	expect(refused.status).toBe(400);
	expect(refused.text).toContain('source.limits.perDay');
	const alone = await ask('POST', '/sources', { ...wrong, name: '' });
	expect(alone.text).toContain('source.name');
});

test('a key is never told, whatever is asked', async () => {
	const { ctx, ask, lake, service } = await api();
	const source = inventedSource({ needsKey: true });
	const made = await ask('POST', '/sources', { source, key: KEY });
	expect(made.body).toMatchObject({ hasKey: true });
	await ask('PUT', `/lakes/${lake}/sources`, { order: [{ source: 'invented-weather' }] });
	await ask('POST', `/lakes/${lake}/refresh`);
	await whenIdle(ctx);
	expect(service.asks[0]?.ask.key).toBe(KEY);
	for (const path of [
		'/sources',
		'/sources/invented-weather',
		'/sources/invented-weather/export',
		'/sources/log',
		`/lakes/${lake}/sources`,
		`/lakes/${lake}/refresh`,
		`/lakes/${lake}/weather`
	]) {
		const { status, text } = await ask('GET', path);
		expect(status, path).toBe(200);
		expect(text, path).not.toContain(KEY);
	}
	const patched = await ask('PATCH', '/sources/invented-weather', { key: 'another-key-0815' });
	expect(patched.text).not.toContain('another-key-0815');
	const refused = await ask('PATCH', '/sources/invented-weather', { key: KEY, isOn: 'yes' });
	expect(refused.status).toBe(400);
	expect(refused.text).not.toContain(KEY);
	const { rows } = await sql<{ config: string }>`SELECT config FROM source`.execute(ctx.db);
	expect(rows[0]?.config).not.toContain(KEY);
});

test('a key is forgotten when the address moves to another host, and kept otherwise', async () => {
	const { ask } = await api();
	const source = inventedSource({ needsKey: true });
	await ask('POST', '/sources', { source, key: KEY });
	const renamed = await ask('PATCH', '/sources/invented-weather', {
		source: { ...source, name: 'Renamed' }
	});
	expect(renamed.body).toMatchObject({ hasKey: true, name: 'Renamed' });
	const calls = source.calls.map((call) => ({
		...call,
		address: call.address.replace('weather.invalid', 'elsewhere.invalid')
	}));
	const moved = await ask('PATCH', '/sources/invented-weather', { source: { ...source, calls } });
	expect(moved.body).toMatchObject({ hasKey: false });
	const kept = await ask('PATCH', '/sources/invented-weather', { key: KEY, source });
	expect(kept.body).toMatchObject({ hasKey: true });
	expect((await ask('PATCH', '/sources/invented-weather', { key: null })).body).toMatchObject({
		hasKey: false
	});
});

test('a lake’s sources stand in their order of trust, with the station’s facts', async () => {
	const { ctx, ask, lake, service } = await api();
	const station = { name: 'Ridge', latitude: 47.5, longitude: -38.2, elevation_m: 500 };
	service.answer = measuredAsColdAs(-8, { station });
	await ask('POST', '/sources', { source: inventedSource() });
	const order = [{ source: 'invented-weather' }, { source: 'csv' }];
	expect((await ask('PUT', `/lakes/${lake}/sources`, { order })).status).toBe(200);
	await ask('POST', `/lakes/${lake}/refresh`);
	await whenIdle(ctx);
	const told = (await ask('GET', `/lakes/${lake}/sources`)).body;
	expect(told?.['order']).toMatchObject([
		{
			kind: 'source',
			name: 'Invented Weather',
			attribution: 'Weather by Invented Weather',
			stationName: 'Ridge',
			distance_m: expect.closeTo(11_119, -1),
			higherBy_m: 400,
			correctsElevation: true,
			correction_K: expect.closeTo(2.6, 10),
			hasPrecipitation: true,
			lastObservedAt: '2027-01-20T12:00:00.000Z',
			forecastIssuedAt: '2027-01-20T12:20:00.000Z'
		},
		{ kind: 'csv' }
	]);
	const off = [{ source: 'invented-weather', correctsElevation: false }];
	const switched = (await ask('PUT', `/lakes/${lake}/sources`, { order: off })).body;
	expect(switched?.['order']).toMatchObject([
		{ kind: 'csv' },
		{ correction_K: 0, possibleCorrection_K: expect.closeTo(2.6, 10) }
	]);
});

test('an order that names a source twice, or one that is not there, is refused', async () => {
	const { ask, lake } = await api();
	const twice = { order: [{ source: 'csv' }, { source: 'csv' }] };
	expect(await ask('PUT', `/lakes/${lake}/sources`, twice)).toMatchObject({ status: 400 });
	const unknown = { order: [{ source: 'nobody' }] };
	const refused = await ask('PUT', `/lakes/${lake}/sources`, unknown);
	expect(refused).toMatchObject({ status: 404 });
	expect(refused.text).toContain('nobody');
});

test('a refresh answers at once with 202, and tells its progress', async () => {
	const { ctx, ask, lake } = await api();
	const without = await ask('POST', `/lakes/${lake}/refresh`);
	expect(without.status).toBe(409);
	expect(without.text).toContain('choose one first');
	await ask('POST', '/sources', { source: inventedSource() });
	await ask('PUT', `/lakes/${lake}/sources`, { order: [{ source: 'invented-weather' }] });
	const started = await ask('POST', `/lakes/${lake}/refresh`);
	expect(started.status).toBe(202);
	expect(started.headers.get('location')).toBe(`/api/v1/lakes/${lake}/refresh`);
	expect(started.body).toMatchObject({ isRunning: true, sources: [{ doneDays: 0 }] });
	await whenIdle(ctx);
	const { body } = await ask('GET', `/lakes/${lake}/refresh`);
	expect(body).toMatchObject({ isRunning: false, sources: [{ status: 'done', doneDays: 31 }] });
	const log = await ask('GET', `/sources/log?lake=${lake}&limit=1`);
	expect(log.body).toMatchObject([{ outcome: 'ok', lakeName: 'Test Lake' }]);
	expect((await ask('GET', '/sources/log?limit=0')).status).toBe(400);
});

test('a try tells what came beside the stored days, and stores nothing', async () => {
	const { ctx, ask, lake } = await api();
	const call = apiOf(ctx);
	const rows = Array.from({ length: 10 }, (_, day) => `2027-01-${10 + day},-8`);
	await call('POST', `/api/v1/lakes/${lake}/weather`, {
		text: `date,tmean_c\n${rows.join('\n')}\n`
	});
	const air = Array.from({ length: 24 * 7 }, (_, hour) => 17.6 + Math.sin(hour));
	ctx.weather.trySource = async (_call, asked) => ({
		raw: '<b>not markup</b>',
		isCut: false,
		answeredBy: 'weather.invalid/past',
		status: 200,
		contentType: 'application/json',
		suggestion: null,
		mapping: null,
		answer: answered({ hours: hoursFrom('2027-01-13T00:00:00Z', air) }),
		words: [`asked from ${asked.from} to ${asked.to}`]
	});
	const address = 'https://weather.invalid/past?lat={latitude}';
	const tried = await ask('POST', '/sources/try', { call: { address }, lake, name: 'It' });
	expect(tried.status).toBe(200);
	expect(tried.body).toMatchObject({
		raw: '<b>not markup</b>',
		words: ['asked from 2027-01-14 to 2027-01-20'],
		comparison: {
			days: 7,
			with: 'your CSV',
			faults: [
				{
					code: 'unitDoubt',
					text: 'It reads 26 °C warmer than your CSV: is it °F? Check the unit of its temperature.'
				}
			]
		}
	});
	expect((await ask('GET', '/sources')).body).toEqual([]);
	const unnamed = { call: { address: 'https://weather.invalid{next}' }, lake };
	const refused = await ask('POST', '/sources/try', unnamed);
	expect(refused).toMatchObject({ status: 400 });
	expect(refused.text).toContain('needs a call before it');
	const nowhere = await ask('POST', '/sources/try', { call: { address } });
	expect(nowhere.status).toBe(400);
	expect(nowhere.text).toContain('to have a position to ask for');
});

test('a stored key goes along with a try on its own host only', async () => {
	const { ctx, ask, lake } = await api();
	const keys: (string | null)[] = [];
	ctx.weather.trySource = async (_call, asked) => {
		keys.push(asked.key);
		const nothing = { status: null, contentType: null, suggestion: null, mapping: null };
		return { raw: '', isCut: false, answeredBy: null, ...nothing, answer: answered(), words: [] };
	};
	await ask('POST', '/sources', { source: inventedSource({ needsKey: true }), key: KEY });
	for (const host of ['weather.invalid', 'elsewhere.invalid']) {
		const call = { address: `https://${host}/past?lat={latitude}` };
		await ask('POST', '/sources/try', { call, lake, source: 'invented-weather' });
	}
	expect(keys).toEqual([KEY, null]);
});
