import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';

/** A weather service of our own on this machine, which counts its calls. */
export interface InventedService {
	address: string;
	/** When each call came, in ms. */
	calls_ms: number[];
	close(): Promise<void>;
}

const S_PER_HOUR = 3600;

export async function inventedService(): Promise<InventedService> {
	const calls_ms: number[] = [];
	const server = createServer(({ url = '/' }, response) => {
		calls_ms.push(performance.now());
		const { pathname, searchParams } = new URL(url, 'http://localhost');
		const [from_s, to_s] = ['from', 'to'].map((name) => Number(searchParams.get(name)));
		const end_s = pathname === '/past' ? Math.min(to_s ?? 0, Date.now() / 1000) : (to_s ?? 0);
		response.writeHead(200, { 'content-type': 'application/json' });
		response.end(JSON.stringify(hours(from_s ?? 0, end_s, Number(searchParams.get('lat')))));
	});
	await listening(server);
	const { port } = server.address() as AddressInfo;
	return {
		address: `http://127.0.0.1:${port}`,
		calls_ms,
		close: () => new Promise((done) => server.close(() => done()))
	};
}

function listening(server: Server): Promise<void> {
	return new Promise((done, fail) => {
		server.once('error', fail);
		server.listen(0, '127.0.0.1', done);
	});
}

/** Cold weather with a day's wave and spells, every lake with its own. */
function hours(from_s: number, end_s: number, latitude: number) {
	const first = Math.ceil(from_s / S_PER_HOUR);
	const count = Math.max(0, Math.floor(end_s / S_PER_HOUR) - first);
	const at = Array.from({ length: count }, (_, index) => first + index);
	const air = (hour: number) =>
		-9 + 4 * Math.cos((Math.PI * (hour - 14)) / 12) + 5 * Math.sin(hour / 70 + 9 * latitude);
	return {
		hourly: {
			time: at.map((hour) => hour * S_PER_HOUR),
			air: at.map((hour) => Number(air(hour).toFixed(1))),
			rain: at.map((hour) => (hour % 30 < 4 ? 0.3 : 0))
		}
	};
}

/** The service as a source that people would configure. */
export function inventedSource(
	address: string,
	limits: { perDay: number; perMinute: number }
): object {
	const mapping = {
		layout: 'columns',
		step: 'hourly',
		time: { path: '$.hourly.time', form: 'epoch_s', zone: 'utc', stamp: 'start' },
		values: {
			air: { path: '$.hourly.air', unit: '°C' },
			precipitation: { path: '$.hourly.rain', unit: 'mm' }
		}
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
		id: 'invented-service',
		name: 'Invented service',
		homepage: 'https://weather.invalid/',
		terms: { attribution: 'Invented', note: 'Invented for timing.' },
		limits: { ...limits, minInterval_min: 10 },
		needsKey: false,
		wantsContact: false,
		calls: [call('history', 'past', { lag_h: 1 }), call('forecast', 'ahead', { ahead_d: 10 })]
	};
}
