import { Agent, get } from 'node:http';

export interface RequestRate {
	requests: number;
	perSecond: number;
	median_ms: number;
}

/** Open at once, as of some readers; one process answers them. */
const CONNECTIONS = 4;

/** How many pages a second are answered, one after the other on each of some kept connections, zipped. */
export async function requestRate(
	url: string,
	pathOf: (index: number) => string,
	duration_ms: number
): Promise<RequestRate> {
	const agent = new Agent({ keepAlive: true, maxSockets: CONNECTIONS });
	const times_ms: number[] = [];
	let asked = 0;
	const start_ms = performance.now();
	const ask = async (): Promise<void> => {
		while (performance.now() < start_ms + duration_ms) {
			const from_ms = performance.now();
			await answered(new URL(pathOf(asked++), url), agent);
			times_ms.push(performance.now() - from_ms);
		}
	};
	await Promise.all(Array.from({ length: CONNECTIONS }, ask));
	const took_ms = performance.now() - start_ms;
	agent.destroy();
	const sorted = times_ms.toSorted((a, b) => a - b);
	return {
		requests: sorted.length,
		perSecond: (1000 * sorted.length) / took_ms,
		median_ms: sorted[sorted.length >> 1] ?? 0
	};
}

/** Reads an answer to its end. @throws Error for one that is no success */
function answered(url: URL, agent: Agent): Promise<void> {
	return new Promise((done, fail) => {
		const request = get(url, { agent, headers: { 'accept-encoding': 'gzip' } }, (response) => {
			response.resume();
			response.once('error', fail);
			response.once('end', () => {
				const { statusCode = 0 } = response;
				if (statusCode < 400) done();
				else fail(new Error(`${url.href} answered ${statusCode}`));
			});
		});
		request.once('error', fail);
	});
}
