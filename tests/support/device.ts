import type { BrowserContext, Page } from 'playwright-core';

/** Kept last, in the order of the worker. */
const WANTED = ['', '/at-the-hole', '/what-if.json', '/trip', '/readings', '/early-ice'];
const LOOK_ms = 250;
const LONGEST_ms = 90_000;

/** Opens a page and waits until the device has kept what is wanted at the hole. */
export async function openAndKeep(device: BrowserContext, path: string): Promise<Page> {
	const page = await device.newPage();
	await page.goto(path);
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

/** What is in the device's own database, as it stands. */
export function waitingOnDevice(page: Page): Promise<{ id: string; reading: Placed }[]> {
	return page.evaluate(
		() =>
			new Promise((done, fail) => {
				const open = indexedDB.open('frostledger');
				open.addEventListener('error', () => fail(open.error));
				open.addEventListener('success', () => {
					const db = open.result;
					if (!db.objectStoreNames.contains('waiting')) return done([]);
					const all = db.transaction('waiting').objectStore('waiting').getAll();
					all.addEventListener('success', () => {
						db.close();
						done(all.result as { id: string; reading: Placed }[]);
					});
				});
			})
	);
}

interface Placed {
	on: string;
	place: string | null;
}

/** The server is there again, and the browser says so. */
export async function connect(device: BrowserContext, page: Page): Promise<void> {
	await device.setOffline(false);
	await page.evaluate(() => dispatchEvent(new Event('online')));
}

/**
 * Lets no script of a page run, as where it has not come yet; its service worker goes on.
 * @returns what wakes the pages that are opened after it
 */
export async function sleep(page: Page): Promise<() => Promise<void>> {
	const session = await page.context().newCDPSession(page);
	await session.send('Emulation.setScriptExecutionDisabled', { value: true });
	return () => session.detach();
}

/** Ends a page's process, as where the phone needs the room. */
export async function crash(page: Page): Promise<void> {
	const session = await page.context().newCDPSession(page);
	const isGone = page.waitForEvent('crash');
	// Nobody is left to answer.
	void session.send('Page.crash').catch(() => undefined);
	await isGone;
	await page.close();
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
