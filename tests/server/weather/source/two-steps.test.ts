import { http, HttpResponse } from 'msw';
import { expect, test } from 'vitest';
import { fetchWeather, type SourceAnswer } from '#lib/server/weather/source/contract.ts';
import {
	ask,
	hoursFrom,
	inventedNetwork,
	inventedSource,
	SETTINGS,
	wave_degC
} from '../../../support/weather-service.ts';

const network = inventedNetwork();
const KEY = 's3cret';

interface Seen {
	url: string;
	key: string | null;
}

/** Asks `points` for the next address, and that one for the weather. */
async function follow(
	next: unknown,
	address = '{next}'
): Promise<{ answer: SourceAnswer; seen: Seen[] }> {
	const seen: Seen[] = [];
	const time = hoursFrom('2026-01-20T00:00Z', 72);
	network.use(
		http.get('*', ({ request }) => {
			seen.push({ url: request.url, key: request.headers.get('x-key') });
			if (request.url.includes('/points')) return HttpResponse.json({ next });
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
	const headers = { 'x-key': '{key}' };
	const first = [{ address: 'https://weather.example/points', headers, next: '$.next' }];
	const calls = [{ ...call, first, headers, address }];
	return { answer: await fetchWeather({ ...source, calls }, ask({ key: KEY }), SETTINGS), seen };
}

function codes({ faults }: SourceAnswer): string[] {
	return faults.map(({ code }) => code);
}

test('a next address at the same host gets the headers and the key', async () => {
	const { answer, seen } = await follow('https://weather.example/grid/7', '{next}?k={key}');
	expect(answer).toMatchObject({ outcome: 'ok', calls: 2 });
	expect(seen[1]).toEqual({ url: 'https://weather.example/grid/7?k=s3cret', key: KEY });
});

test('a next address may be a path, or a part of an address', async () => {
	const path = await follow('/grid/8');
	expect(path.seen[1]?.url).toBe('https://weather.example/grid/8');
	const part = await follow(817, 'https://weather.example/stations/{next}/hours');
	expect(part.seen[1]?.url).toBe('https://weather.example/stations/817/hours');
	const odd = await follow('../x?y#z', 'https://weather.example/stations/{next}/hours');
	expect(new URL(odd.seen[1]?.url ?? '').pathname).toBe('/stations/..%2Fx%3Fy%23z/hours');
});

test('a next address at another host is asked, without headers and without the key', async () => {
	const { answer, seen } = await follow('https://other.example/grid/7');
	expect(answer.outcome).toBe('ok');
	expect(seen[1]).toEqual({ url: 'https://other.example/grid/7', key: null });
	const keyed = await follow('https://other.example/grid/7', '{next}?k={key}');
	expect(codes(keyed.answer)).toEqual(['addressNotAllowed']);
	expect(keyed.seen).toHaveLength(1);
	expect(JSON.stringify(keyed.answer)).not.toContain(KEY);
	const echoed = await follow(`https://other.example/grid/7?k=${KEY}`);
	expect(codes(echoed.answer)).toEqual(['addressNotAllowed']);
	expect(echoed.seen).toHaveLength(1);
});

test.each([
	['http://weather.example/grid/7', 'addressNotAllowed'],
	['https://10.0.0.7/grid', 'addressNotAllowed'],
	['https://[::1]/grid', 'addressNotAllowed'],
	['file:///etc/passwd', 'addressNotAllowed'],
	['https://[nonsense', 'badMapping'],
	[null, 'badMapping'],
	[{ a: 1 }, 'badMapping']
])('a next address like %o is not asked', async (next, code) => {
	const { answer, seen } = await follow(next);
	expect(codes(answer)).toEqual([code]);
	expect(seen).toHaveLength(1);
});

test('a first call that fails is the failure', async () => {
	network.use(http.get('*', () => HttpResponse.json({ detail: 'outside' }, { status: 404 })));
	const source = inventedSource();
	const [call] = source.calls;
	if (!call) throw new Error('the invented source has no call');
	const first = [{ address: 'https://weather.example/points', next: '$.next' }];
	const calls = [{ ...call, first, address: '{next}' }];
	const answer = await fetchWeather({ ...source, calls }, ask(), SETTINGS);
	expect(codes(answer)).toEqual(['notFound']);
	expect(answer.faults[0]?.text).toContain('“outside”');
	expect(answer.calls).toBe(1);
});
