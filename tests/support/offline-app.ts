import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, BrowserContextOptions } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { startApp, type RunningApp } from './app.ts';
import { launch } from './browser.ts';

/** An app that can be stopped and started again at the same address, and a device that visits it. */
export function offlineApp(environment: Record<string, string> = {}, args: string[] = []) {
	const data = mkdtempSync(join(tmpdir(), 'frostledger-offline-'));
	let app: RunningApp | null = null;
	let browser: Browser | undefined;
	let port = 0;

	const start = async (folder?: string) => {
		const own = { PORT: String(port), FROSTLEDGER_DATA: data, FROSTLEDGER_REFRESH: 'off' };
		app ??= await startApp({ ...own, ...environment }, folder);
	};
	beforeAll(async () => {
		port = await freePort();
		[, browser] = await Promise.all([start(), launch(args)]);
	});
	afterAll(async () => {
		await browser?.close();
		await app?.stop();
		rmSync(data, { recursive: true, force: true });
	});
	const url = (path: string) => `http://localhost:${port}${path}`;
	return {
		url,
		/** As it is built here, or in another folder. */
		start,
		async stop() {
			await app?.stop();
			app = null;
		},
		/** A device of its own: what it keeps no other has. */
		async device(options: BrowserContextOptions = {}): Promise<BrowserContext> {
			if (!browser) throw new Error('no browser is running');
			return browser.newContext({ baseURL: url('/'), ...options, serviceWorkers: 'allow' });
		},
		async readings(lake: string): Promise<{ id: string; place: string | null; version: number }[]> {
			const response = await fetch(url(`/api/v1/lakes/${lake}/readings`));
			return (await response.json()) as { id: string; place: string | null; version: number }[];
		},
		async ask(method: string, path: string, body: unknown): Promise<Response> {
			return fetch(url(`/api/v1${path}`), {
				method,
				body: JSON.stringify(body),
				headers: { 'content-type': 'application/json' }
			});
		}
	};
}

function freePort(): Promise<number> {
	return new Promise((done, fail) => {
		const server = createServer();
		server.once('error', fail);
		server.listen(0, '127.0.0.1', () => {
			const address = server.address();
			server.close(() => done(typeof address === 'object' && address ? address.port : 0));
		});
	});
}
