import { request } from 'node:http';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { startApp, type RunningApp } from '../support/app.ts';

let app: RunningApp;

beforeAll(async () => {
	app = await startApp();
});
afterAll(() => app.stop());

interface Sent {
	host?: string;
	origin?: string;
}

/** Sends the form that switches units, as a page of `origin` would; on IPv4, where the app listens. */
function post({ host, origin }: Sent): Promise<{ status: number; text: string }> {
	const { port, host: own } = new URL(app.url);
	return new Promise((done, fail) => {
		const sent = request({
			host: '127.0.0.1',
			port,
			path: '/units',
			method: 'POST',
			headers: {
				'content-type': 'application/x-www-form-urlencoded',
				host: host ?? own,
				...(origin === undefined ? {} : { origin })
			}
		});
		sent.on('error', fail);
		sent.on('response', (response) => {
			let text = '';
			response.on('data', (chunk: Buffer) => (text += chunk.toString()));
			response.on('end', () => done({ status: response.statusCode ?? 0, text }));
		});
		sent.end('measure=imperial&back=%2Fmethod');
	});
}

test.each(['localhost', '127.0.0.1'])(
	'with nothing set a form is taken on http://%s',
	async (name) => {
		const host = `${name}:${new URL(app.url).port}`;
		expect((await post({ host, origin: `http://${host}` })).status).toBe(303);
	}
);

test.each(['http://elsewhere.example', 'null', 'https://localhost'])(
	'a form of a page of %s is refused',
	async (origin) => {
		const { status, text } = await post({ origin });
		expect(status).toBe(403);
		expect(text).toContain('Changes are taken from this site only');
	}
);

test('a name that does not belong to this machine is not answered', async () => {
	const host = 'rebound.example';
	const { status, text } = await post({ host, origin: `http://${host}` });
	expect(status).toBe(421);
	expect(text).toContain('FROSTLEDGER_HOSTS');
});

test('a taken port is told in a sentence with the remedy', async () => {
	const { port } = new URL(app.url);
	const second = await startApp({ PORT: port }).catch((cause: unknown) => cause);
	expect(String(second)).toMatch(/stopped with code 1/);
	expect(String(second)).toContain(`Frostledger did not start: port ${port} is taken`);
	expect(String(second)).not.toMatch(/^\s+at /m);
});

test('asked to end it ends in order, and answers a listed name until then', async () => {
	const other = await startApp({
		FROSTLEDGER_HOSTS: 'ice.example',
		FROSTLEDGER_PASSPHRASE: 'four words for a test'
	});
	const { port } = new URL(other.url);
	const status = await new Promise((done, fail) => {
		const headers = { host: 'ice.example' };
		request({ host: '127.0.0.1', port, path: '/method', headers }, ({ statusCode }) =>
			done(statusCode)
		)
			.on('error', fail)
			.end();
	});
	expect(status).toBe(200);
	expect(await other.stop()).toBe(0);
});
