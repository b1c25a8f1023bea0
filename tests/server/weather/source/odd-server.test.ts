import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import {
	fetchWeather,
	type Ask,
	type FetchSettings,
	type SourceAnswer
} from '#lib/server/weather/source/contract.ts';
import { OddServer } from '../../../support/odd-server.ts';
import {
	ask,
	hoursFrom,
	inventedSource,
	SETTINGS,
	wave_degC
} from '../../../support/weather-service.ts';

const odd = new OddServer();
beforeAll(() => odd.start());
afterAll(() => odd.stop());
afterEach(() => {
	odd.seen.length = 0;
	odd.sentBytes = 0;
});

const ALLOWED: FetchSettings = { ...SETTINGS, allowedHosts: ['127.0.0.1'] };

function get(
	address: string,
	settings: Partial<FetchSettings> = {},
	changes: Partial<Ask> = {},
	headers: Record<string, string> = {}
): Promise<SourceAnswer> {
	const [call] = inventedSource().calls;
	if (!call) throw new Error('the invented source has no call');
	const source = inventedSource({ calls: [{ ...call, address, headers }] });
	return fetchWeather(source, ask(changes), { ...ALLOWED, ...settings });
}

function codes({ faults }: SourceAnswer): string[] {
	return faults.map(({ code }) => code);
}

const time = hoursFrom('2026-01-20T00:00Z', 72);
odd.answer = { time, air: time.map((_, at) => wave_degC(at)), rain: time.map(() => 0) };

test('a host that the operator names is asked, wherever it is', async () => {
	const answer = await get(odd.at('/hours'));
	expect(answer).toMatchObject({ outcome: 'ok', faults: [], calls: 1 });
	expect(answer.hours).toHaveLength(60);
	expect(odd.seen[0]?.headers['user-agent']).toBe('Frostledger/0.1 (ice@frostledger.example)');
});

test.each([
	['its address', '127.0.0.1'],
	['a name that resolves to it', 'localhost'],
	['its address written as one number', '2130706433'],
	['its address in octal', '0177.0.0.1'],
	['its address in short', '127.1'],
	['IPv6 that holds it', '[::ffff:127.0.0.1]'],
	['everything and nothing', '0.0.0.0']
])('this machine is not asked by %s', async (_, host) => {
	const answer = await get(odd.at('/hours', host), { allowedHosts: [] });
	expect(codes(answer)).toEqual(['addressNotAllowed']);
	expect(answer.faults[0]?.text).toMatch(/FROSTLEDGER_SOURCE_HOSTS/);
	expect(odd.seen).toEqual([]);
});

test('a redirect to this machine is not followed, by address or by name', async () => {
	const toAddress = odd.at(`/redirect?to=${odd.at('/hours', '127.0.0.1')}`, 'localhost');
	const byAddress = await get(toAddress, { allowedHosts: ['localhost'] });
	expect(codes(byAddress)).toEqual(['addressNotAllowed']);
	const toName = odd.at(`/redirect?to=${odd.at('/hours', 'localhost')}`);
	const byName = await get(toName);
	expect(codes(byName)).toEqual(['addressNotAllowed']);
	expect(odd.seen.every(({ url }) => url.startsWith('/redirect'))).toBe(true);
});

test('a redirect to something that is no web address is not followed', async () => {
	for (const target of ['file:///etc/passwd', 'ftp://127.0.0.1/', 'http://[bad', 'gopher://x/']) {
		const answer = await get(odd.at(`/redirect?to=${encodeURIComponent(target)}`));
		expect(codes(answer)).toEqual(['addressNotAllowed']);
		expect(answer.faults[0]?.text).not.toMatch(/passwd/);
	}
});

test('a redirect that stays is followed', async () => {
	const answer = await get(odd.at('/redirect?to=/hours'), {}, {}, { 'x-invented': 'yes' });
	expect(answer).toMatchObject({ outcome: 'ok', calls: 2 });
	expect(odd.seen[1]).toMatchObject({ url: '/hours', headers: { 'x-invented': 'yes' } });
});

test('an endless redirect is left', async () => {
	const answer = await get(odd.at('/loop?n=0'));
	expect(codes(answer)).toEqual(['redirectedTooOften']);
	expect(answer.calls).toBe(ALLOWED.maxRedirects + 1);
});

test('a byte now and then does not hold the line for longer than the limit', async () => {
	for (const path of ['/slow', '/silent']) {
		const start = performance.now();
		const answer = await get(odd.at(path), { timeOut_ms: 300 });
		expect(codes(answer)).toEqual(['timeOut']);
		expect(answer.faults[0]?.text).toMatch(/within 0.3 s/);
		expect(performance.now() - start).toBeLessThan(1500);
	}
});

test('who asked can stop asking', async () => {
	const stop = new AbortController();
	setTimeout(() => stop.abort(), 50);
	const answer = await get(odd.at('/slow'), {}, { signal: stop.signal });
	expect(codes(answer)).toEqual(['stopped']);
});

test('a small file that unpacks to a gigabyte is left in its first megabytes', async () => {
	const before = process.memoryUsage().rss;
	const answer = await get(odd.at('/bomb'), { timeOut_ms: 20_000 });
	expect(codes(answer)).toEqual(['tooLarge']);
	expect(answer.hours).toEqual([]);
	expect(odd.sentBytes).toBeLessThan(100_000_000);
	expect(process.memoryUsage().rss - before).toBeLessThan(200_000_000);
});

test('a huge list is left in its first megabytes', async () => {
	const answer = await get(odd.at('/huge'), { timeOut_ms: 20_000 });
	expect(codes(answer)).toEqual(['tooLarge']);
	expect(answer.faults[0]?.text).toMatch(/larger than 1 MB/);
	expect(odd.sentBytes).toBeLessThan(100_000_000);
});

test('a connection that breaks before the answer is tried once more', async () => {
	const answer = await get(odd.at('/reset'));
	expect(codes(answer)).toEqual(['unreachable']);
	expect(answer.calls).toBe(2);
});

test.each(['/reset-midway', '/short', '/half'])(
	'of half an answer (%s) nothing is used',
	async (path) => {
		const answer = await get(odd.at(path));
		expect(codes(answer)).toEqual(['truncated']);
		expect(answer.outcome).toBe('failed');
	}
);

test('what is not packed as it says is told', async () => {
	const answer = await get(odd.at('/not-gzip'));
	expect(codes(answer)).toEqual(['truncated']);
});

test('nobody there, and no such name', async () => {
	const gone = new OddServer();
	await gone.start();
	const address = gone.at('/hours');
	await gone.stop();
	const nobody = await get(address);
	expect(codes(nobody)).toEqual(['unreachable']);
	expect(nobody.faults[0]?.text).toMatch(/takes no connections/);
	const nameless = await get('https://no-such-host.invalid/');
	// A machine without a network may wait for its name server until the time is up.
	expect(['unreachable', 'timeOut']).toContain(codes(nameless)[0]);
});

const KEY = 's3cr+t/k&y=';

test('key and headers go to the host of the source, and to no other', async () => {
	const headers = { 'x-api-key': '{key}', accept: 'text/json' };
	const other = await new Promise<OddServer>((resolve) => {
		const server = new OddServer();
		void server.start().then(() => resolve(server));
	});
	try {
		other.answer = odd.answer;
		const target = encodeURIComponent(other.at('/hours'));
		const answer = await get(odd.at(`/redirect?to=${target}`), {}, { key: KEY }, headers);
		expect(answer.outcome).toBe('ok');
		expect(odd.seen[0]?.headers['x-api-key']).toBe(KEY);
		expect(other.seen[0]?.headers).not.toHaveProperty('x-api-key');
		expect(JSON.stringify(other.seen)).not.toContain(KEY);
		const keyed = `${odd.at('/redirect')}?to=${target}%3Fkey%3D{key}`;
		const refused = await get(keyed, {}, { key: KEY });
		expect(codes(refused)).toEqual(['addressNotAllowed']);
		expect(other.seen).toHaveLength(1);
	} finally {
		await other.stop();
	}
});

test.each([
	'/hours?key={key}&n=1',
	'/reset?key={key}',
	'/nowhere?key={key}',
	'/half?key={key}',
	'/loop?n=0&key={key}',
	'/redirect?to=ftp://x/{key}'
])('no sentence holds the key (%s)', async (path) => {
	const answer = await get(odd.at(path), {}, { key: KEY });
	const text = JSON.stringify(answer);
	expect(odd.seen.length).toBeGreaterThan(0);
	for (const spelling of [KEY, encodeURIComponent(KEY), encodeURI(KEY)]) {
		expect(text).not.toContain(spelling);
	}
});
