import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { startApp, type RunningApp } from './app.ts';
import { DESK, launch, openPage } from './browser.ts';

type Watched = Page & { problems: string[] };

/** A refused form or page, a missing one and a line cut on purpose: the browser notes each as an error. */
const REFUSED = /status of 40[0134]|ERR_INTERNET_DISCONNECTED/;

/** One app and one browser for the tests of a file; an error on any page fails its test. */
export function story(environment: Record<string, string> = {}) {
	let app: RunningApp | undefined;
	let browser: Browser | undefined;
	let opened: Watched[] = [];

	beforeAll(async () => {
		[app, browser] = await Promise.all([startApp(environment), launch()]);
	});
	afterEach(async () => {
		const problems = opened.flatMap((page) => page.problems);
		await Promise.all(opened.map((page) => page.context().close()));
		opened = [];
		expect(problems.filter((problem) => !REFUSED.test(problem))).toEqual([]);
	});
	afterAll(async () => {
		await browser?.close();
		await app?.stop();
	});

	const url = (path: string) => new URL(path, app?.url).href;
	return {
		/** A path of the app, whole. */
		url,
		/** A new visitor's page. */
		async open(path: string, options: BrowserContextOptions = DESK): Promise<Page> {
			if (!browser) throw new Error('no browser is running');
			const page = await openPage(browser, { ...options, baseURL: url('/') });
			opened.push(page);
			await page.goto(path);
			return page;
		},
		/** What the API answers; what it refuses fails the test. */
		async ask<T>(method: string, path: string, body?: unknown): Promise<T> {
			const isText = typeof body === 'string';
			const response = await fetch(url(`/api/v1${path}`), {
				method,
				...(body === undefined ? {} : { body: isText ? body : JSON.stringify(body) }),
				headers: { 'content-type': isText ? 'text/csv' : 'application/json' }
			});
			expect(response.ok, `${method} ${path}: ${response.status}`).toBe(true);
			return (await response.json()) as T;
		}
	};
}

export type Story = ReturnType<typeof story>;
