import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

const S_PER_HOUR = 3600;

/** An invented weather service on this machine that counts what it is asked. */
export interface CountingService {
	/** Each call, as `past 47.1` or `ahead 47.1`. */
	calls: string[];
	/** It as a source that people would configure, with so many lakes' worth of calls allowed. */
	source: object;
	stop(): Promise<void>;
}

export async function countingService(): Promise<CountingService> {
	const calls: string[] = [];
	const server = createServer(({ url = '/' }, response) => {
		const { pathname, searchParams } = new URL(url, 'http://localhost');
		const [from_s = 0, to_s = 0] = ['from', 'to'].map((name) => Number(searchParams.get(name)));
		calls.push(`${pathname.slice(1)} ${searchParams.get('lat')}`);
		const end_s = pathname === '/past' ? Math.min(to_s, Date.now() / 1000) : to_s;
		const count = Math.max(0, Math.floor((end_s - from_s) / S_PER_HOUR));
		const time = Array.from({ length: count }, (_, hour) => from_s + hour * S_PER_HOUR);
		response.writeHead(200, { 'content-type': 'application/json' });
		response.end(JSON.stringify({ time, air: time.map((at) => -9 + 3 * Math.sin(at / 14_000)) }));
	});
	await new Promise<void>((done) => server.listen(0, '127.0.0.1', () => done()));
	const { port } = server.address() as AddressInfo;
	return {
		calls,
		source: sourceAt(`http://127.0.0.1:${port}`),
		async stop() {
			server.closeAllConnections();
			await new Promise<void>((done) => server.close(() => done()));
		}
	};
}

function sourceAt(address: string): object {
	const mapping = {
		layout: 'columns',
		step: 'hourly',
		time: { path: '$.time', form: 'epoch_s', zone: 'utc', stamp: 'start' },
		values: { air: { path: '$.air', unit: '°C' } }
	};
	const call = (part: string, path: string, reach: object) => ({
		part,
		address: `${address}/${path}?lat={latitude}&from={from:epoch_s}&to={to:epoch_s}`,
		format: 'json',
		chunk_d: 92,
		reach,
		mapping
	});
	return {
		id: 'counting-service',
		name: 'Counting service',
		homepage: 'https://weather.invalid/',
		terms: { attribution: 'Invented', note: 'Invented for the tests.' },
		limits: { perDay: 1000, perMinute: 600, minInterval_min: 0 },
		needsKey: false,
		wantsContact: false,
		calls: [call('history', 'past', { lag_h: 1 }), call('forecast', 'ahead', { ahead_d: 10 })]
	};
}
