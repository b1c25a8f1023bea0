import type { BrowserContext, Page } from 'playwright-core';

/** Kept last, in the order of the worker. */
const WANTED = ['', '/at-the-hole', '/what-if.json', '/trip', '/early-ice'];
const LOOK_ms = 250;
const LONGEST_ms = 90_000;

/** Opens a page and waits until the device has kept what is wanted at the hole. */
export async function openAndKeep(device: BrowserContext, path: string): Promise<Page> {
	const page = await device.newPage();
	await page.goto(path);
	await until(page, () => navigator.serviceWorker.controller !== null, undefined);
	// The first visit came before there was anybody to keep it.
	await page.reload();
	const lake = path.split('/').slice(0, 3).join('/');
	await keptPages(
		page,
		WANTED.map((each) => lake + each)
	);
	return page;
}

/** Waits until the device has kept these. */
export async function keptPages(page: Page, paths: readonly string[]): Promise<void> {
	await until(
		page,
		async (wanted) => {
			const cache = await caches.open('frostledger-pages');
			const kept = (await cache.keys()).map(({ url }) => new URL(url).pathname);
			return wanted.every((each) => kept.includes(each));
		},
		[...paths]
	);
}

/** Bytes in all caches of a device, as they are kept. */
export function cachedBytes(page: Page): Promise<number> {
	return page.evaluate(async () => {
		let sum = 0;
		for (const name of await caches.keys()) {
			const cache = await caches.open(name);
			for (const request of await cache.keys()) {
				const kept = await cache.match(request, { ignoreVary: true });
				sum += (await kept?.arrayBuffer())?.byteLength ?? 0;
			}
		}
		return sum;
	});
}

async function until<Given>(
	page: Page,
	isSo: (given: Given) => boolean | Promise<boolean>,
	given: Given
): Promise<void> {
	for (let waited_ms = 0; waited_ms < LONGEST_ms; waited_ms += LOOK_ms) {
		if (await page.evaluate(isSo as (given: unknown) => boolean, given)) return;
		await page.waitForTimeout(LOOK_ms);
	}
	throw new Error(`waited for nothing: ${isSo.toString()}`);
}
