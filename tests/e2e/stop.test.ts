import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { expect, onTestFinished, test } from 'vitest';

interface Logging {
	url: string;
	child: ChildProcess;
	lines: Record<string, unknown>[];
	ended: Promise<number | null>;
}

/** The app with a log of JSON, read line by line. */
async function loggingApp(): Promise<Logging> {
	const data = mkdtempSync(join(tmpdir(), 'frostledger-stop-'));
	onTestFinished(() => rmSync(data, { recursive: true, force: true }));
	const child = spawn(
		process.execPath,
		['node_modules/tsx/dist/cli.mjs', 'src/commands/start.ts'],
		{
			env: {
				...process.env,
				NODE_ENV: 'production',
				VITEST: undefined,
				PORT: '0',
				FROSTLEDGER_DATA: data,
				FROSTLEDGER_REFRESH: 'off',
				FROSTLEDGER_LOG: 'json'
			}
		}
	);
	onTestFinished(() => void child.kill('SIGKILL'));
	const lines: Record<string, unknown>[] = [];
	createInterface({ input: child.stdout }).on('line', (line) => {
		lines.push(JSON.parse(line) as Record<string, unknown>);
	});
	const ended = new Promise<number | null>((done) => child.once('close', done));
	const find = () => lines.find(({ event }) => event === 'start')?.['url'];
	await expect.poll(find, { timeout: 60_000 }).toBeTruthy();
	return { url: String(find()), child, lines, ended };
}

test('asked to end it finishes what is under way, takes nothing new, and logs all of it', async () => {
	const { url, child, lines, ended } = await loggingApp();
	const { port } = new URL(url);
	const secret = 'k3y-in-a-query';
	expect((await fetch(`${url}/api/v1/ready?key=${secret}`)).status).toBe(200);
	const path = '/api/v1/lakes/pinder-lake/weather?dryRun=1';
	const headers = { 'content-type': 'text/csv', host: `localhost:${port}` };
	const sent = request({ host: '127.0.0.1', port, path, method: 'POST', headers });
	const answer = new Promise<{ status: number | undefined; text: string }>((done, fail) => {
		sent.on('error', fail);
		sent.on('response', (response) => {
			let text = '';
			response.on('data', (chunk: Buffer) => (text += chunk.toString()));
			response.on('end', () => done({ status: response.statusCode, text }));
		});
	});
	sent.write('date,tmean_c\n2026-01-01,-5\n');
	await new Promise((resolve) => setTimeout(resolve, 300));
	child.kill('SIGTERM');
	const stopping = () => lines.some(({ event }) => event === 'stopping');
	await expect.poll(stopping, { timeout: 10_000 }).toBe(true);
	await expect(fetch(`${url}/api/v1/health`)).rejects.toThrow();
	sent.end('2026-01-02,-7\n');
	expect(await answer).toMatchObject({
		status: 200,
		text: expect.stringContaining('"accepted":2')
	});
	expect(await ended).toBe(0);
	expect(lines.at(-1)).toMatchObject({ event: 'stopped', areAnswered: true, isStopped: true });
	const requests = lines.filter(({ event }) => event === 'request');
	expect(requests).toMatchObject([
		{ method: 'GET', path: '/api/v1/ready', status: 200 },
		{ method: 'POST', path: '/api/v1/lakes/pinder-lake/weather', status: 200 }
	]);
	expect(JSON.stringify(lines)).not.toContain(secret);
});

test('a request that never ends is cut off in the end', async () => {
	const { url, child, lines, ended } = await loggingApp();
	const { port } = new URL(url);
	const headers = { 'content-type': 'text/csv', host: `localhost:${port}` };
	const path = '/api/v1/lakes/pinder-lake/weather';
	const sent = request({ host: '127.0.0.1', port, path, method: 'POST', headers });
	const broken = new Promise((done) => sent.once('error', done));
	sent.write('date,tmean_c\n');
	await new Promise((resolve) => setTimeout(resolve, 300));
	child.kill('SIGTERM');
	expect(await ended).toBe(1);
	expect(String(await broken)).toMatch(/hang up|ECONNRESET/);
	expect(lines.at(-1)).toMatchObject({ event: 'stopped', areAnswered: false, isStopped: true });
});

test('the app as it is built makes estimates beside the thread that answers, and ends those as well', async () => {
	const { url, child, lines, ended } = await loggingApp();
	const events = (wanted: string) => lines.filter(({ event }) => event === wanted);
	await expect.poll(() => events('workers'), { timeout: 20_000 }).toHaveLength(1);
	expect((await fetch(`${url}/lakes/pinder-lake`)).status).toBe(200);
	expect(events('estimate')).toMatchObject([{ kind: 'outlook', after_ms: expect.any(Number) }]);
	// One that is under way when the app is asked to end is answered, too.
	const last = fetch(`${url}/lakes/pinder-lake?asOf=2027-02-01`);
	// What was asked for later is answered: the app has heard of the one before.
	await fetch(`${url}/api/v1/health`);
	child.kill('SIGTERM');
	expect((await last).status).toBe(200);
	expect(await ended).toBe(0);
	expect(events('failure')).toEqual([]);
});
