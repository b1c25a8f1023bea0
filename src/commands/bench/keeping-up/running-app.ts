import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface RunningApp {
	url: string;
	/** What the API answers. @throws Error where it refuses. */
	api<Answer>(method: string, path: string, body?: unknown): Promise<Answer>;
	stop(): Promise<void>;
}

/** The app as `npm start` runs it, on a free port, with data of its own, allowed to ask this machine. */
export async function runningApp(): Promise<RunningApp> {
	const data = mkdtempSync(join(tmpdir(), 'frostledger-bench-app-'));
	const child = spawn(process.execPath, ['--import', 'tsx', 'src/commands/start.ts'], {
		env: {
			...process.env,
			NODE_ENV: 'production',
			VITEST: undefined,
			PORT: '0',
			FROSTLEDGER_DATA: data,
			FROSTLEDGER_SOURCE_HOSTS: '127.0.0.1'
		},
		stdio: ['ignore', 'pipe', 'inherit']
	});
	const url = await addressOf(child);
	return {
		url,
		api: (method, path, body) => ask(new URL(`/api/v1${path}`, url), method, body),
		async stop() {
			const ended = new Promise((done) => child.once('exit', done));
			child.kill('SIGTERM');
			await ended;
			rmSync(data, { recursive: true, force: true });
		}
	};
}

function addressOf(child: ChildProcess): Promise<string> {
	return new Promise((done, fail) => {
		child.stdout?.on('data', (chunk: Buffer) => {
			const found = /http:\/\/\S+/.exec(chunk.toString());
			if (found) done(found[0]);
		});
		child.once('exit', (code) => fail(new Error(`the app under test stopped with code ${code}`)));
	});
}

async function ask<Answer>(url: URL, method: string, body: unknown): Promise<Answer> {
	const isText = typeof body === 'string';
	const response = await fetch(url, {
		method,
		...(body === undefined ? {} : { body: isText ? body : JSON.stringify(body) }),
		headers: { 'content-type': isText ? 'text/csv' : 'application/json' }
	});
	if (!response.ok) throw new Error(`${method} ${url.pathname}: ${await response.text()}`);
	return (await response.json()) as Answer;
}
