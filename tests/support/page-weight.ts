import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Notes every script that a page fetches from now on; the answer is their size, compressed, by address. */
export function weighScripts(page: Page): () => Promise<Map<string, number>> {
	const bodies = new Map<string, Promise<Buffer>>();
	page.on('response', (response) => {
		const isScript = response.request().resourceType() === 'script';
		if (!isScript && !new URL(response.url()).pathname.endsWith('.js')) return;
		expect(response.headers()['content-encoding']).toMatch(/^(br|gzip)$/);
		const body = response.body();
		// One that comes after the weighing goes with its page; whoever weighs still hears of it.
		body.catch(() => undefined);
		bodies.set(response.url(), body);
	});
	return async () => {
		const sizes = [...bodies].map(
			async ([url, body]) => [url, gzipSync(await body).length] as const
		);
		return new Map(await Promise.all(sizes));
	};
}

export function sum(sizes: ReadonlyMap<string, number>): number {
	return [...sizes.values()].reduce((total, size) => total + size, 0);
}
