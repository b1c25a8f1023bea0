import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { addDays, winterOf } from '#lib/model/calendar.ts';
import { browserPath, PHONE } from '../support/browser.ts';
import {
	cachedBytes,
	connect,
	crash,
	keptPages,
	openAndKeep,
	sleep,
	waitingOnDevice
} from '../support/device.ts';
import { offlineApp } from '../support/offline-app.ts';

const app = offlineApp();
const LAKE = '/lakes/pinder-lake';
const HOLE = `${LAKE}/at-the-hole`;
const NOTICE = '#not-fresh';

async function logHole(page: Page, thickness_cm: string, place: string): Promise<void> {
	await page.getByLabel(/^Whole ice/).fill(thickness_cm);
	await page.getByLabel(/place$/).fill(place);
	await page.getByRole('button', { name: 'Store this hole' }).click();
	await page.getByRole('listitem').filter({ hasText: place }).first().waitFor();
}

test.runIf(browserPath)(
	'three holes logged without a connection outlive the crash of their page, and are stored once each',
	async () => {
		const device = await app.device(PHONE);
		const first = await openAndKeep(device, LAKE);
		await app.stop();
		await device.setOffline(true);

		await first.goto(HOLE);
		await first.locator(NOTICE).filter({ hasText: 'No connection to the server' }).waitFor();
		const places = ['Kept one', 'Kept two', 'Kept three'];
		for (const [at, place] of places.entries()) await logHole(first, String(51 + at), place);
		const told = await first.getByRole('status', { name: 'The hole that waits' }).innerText();
		expect(told).toMatch(/not sent yet: 53 cm, Kept three/);
		expect(told).toMatch(/The estimate (stays at|goes from) \d+ cm/);
		// Typed, and not sent off when the page is killed.
		await first.getByLabel(/^Whole ice/).pressSequentially('44');
		await crash(first);

		const second = await device.newPage();
		await second.goto(HOLE);
		for (const place of places) {
			await second.getByRole('listitem').filter({ hasText: place }).first().waitFor();
		}
		expect(await second.getByLabel(/^Whole ice/).inputValue()).toBe('44');

		// One was sent before, and its answer got lost on the way.
		await app.start();
		const [waits] = await waitingOnDevice(second);
		const { id: clientId, reading } = waits ?? {};
		const before = await app.ask('POST', '/lakes/pinder-lake/readings', { ...reading, clientId });
		expect(before.status).toBe(201);
		await connect(device, second);
		await expect
			.poll(
				async () => {
					const stored = (await app.readings('pinder-lake')).map(({ place }) => place);
					return stored.filter((place) => place?.startsWith('Kept')).toSorted();
				},
				{ timeout: 30_000 }
			)
			.toEqual(places.toSorted());
		await second.getByText('On this phone, not sent yet').waitFor({ state: 'detached' });
		await device.close();
	}
);

test.runIf(browserPath)('the pages of an opened lake are there without a connection', async () => {
	await app.start();
	const device = await app.device(PHONE);
	const page = await openAndKeep(device, LAKE);
	expect(await cachedBytes(page)).toBeLessThan(3_000_000);
	await app.stop();
	await device.setOffline(true);
	const pages = ['', '/sites', '/loads', '/weak-spots', '/trip', '/at-the-hole', '/going-on'];
	for (const path of pages) {
		await page.goto(LAKE + path);
		await page.locator(NOTICE).waitFor();
		await page.getByRole('heading', { level: 1 }).first().waitFor();
	}
	// From page to page as Kit goes, whose data is not to be had: the whole page is.
	await page.goto(LAKE);
	await page.locator('a[href$="/at-the-hole"]').first().click();
	await page.waitForURL(`**${HOLE}`);
	await page.locator(NOTICE).waitFor();
	await page.getByLabel(/^Whole ice/).waitFor();

	await page.goto(`${LAKE}/weather`);
	await page.getByRole('heading', { name: /not kept on this device/ }).waitFor();
	await device.close();
});

const CALLED_REACHED = /reached, drilled|minimum reached by/i;
const AS_IT_STOOD = /As it stood on .*met(, drilled| at the lower bound and drilled)/;

/** A lake in steady frost up to yesterday, drilled the day before: its loads are reached. */
async function reachedLake(): Promise<string> {
	const today = new Date().toISOString().slice(0, 10);
	const made = await app.ask('POST', '/lakes', {
		name: 'Steady Pond',
		latitude: 52.1,
		longitude: 0.2,
		water: 'lake'
	});
	const { id } = (await made.json()) as { id: string };
	const rows = Array.from({ length: 60 }, (_, at) => `${addDays(today, at - 60)},-18,-22,-14,0`);
	const weather = await fetch(app.url(`/api/v1/lakes/${id}/weather`), {
		method: 'POST',
		body: ['date,temp_c,min_c,max_c,precip_mm', ...rows].join('\n'),
		headers: { 'content-type': 'text/csv' }
	});
	expect(weather.ok).toBe(true);
	const winter = winterOf(today);
	await app.ask('PUT', `/lakes/${id}/winters/${winter}`, { freezeUpOn: addDays(today, -50) });
	const hole = { total_m: 0.7, clear_m: 0.7, white_m: 0, snow_m: 0 };
	await app.ask('POST', `/lakes/${id}/readings`, {
		on: addDays(today, -1),
		kind: 'measured',
		holes: Array.from({ length: 6 }, () => hole),
		core: 'sound'
	});
	return `/lakes/${id}`;
}

function homeKeptAt(page: Page): Promise<number> {
	return page.evaluate(async () => {
		const cache = await caches.open('frostledger-pages');
		const kept = await cache.match('/', { ignoreVary: true });
		return Number(kept?.headers.get('x-kept-at') ?? 0);
	});
}

test.runIf(browserPath)(
	'an old copy says so loudly, counts its ages on, and shows no status as reached',
	async () => {
		await app.start();
		const lake = await reachedLake();
		const device = await app.device(PHONE);
		const page = await openAndKeep(device, lake);
		expect(await page.getByText(CALLED_REACHED).count()).toBeGreaterThan(0);
		// Home is kept as it was last seen: once it tells of the lake, not while that is worked out.
		await page.goto('/');
		await page.getByText(CALLED_REACHED).first().waitFor();
		const told = Date.now();
		await page.goto('/');
		await expect.poll(() => homeKeptAt(page), { timeout: 20_000 }).toBeGreaterThanOrEqual(told);
		const pages = [lake, `${lake}/going-on`, `${lake}/trip`, '/'];
		await app.stop();
		await device.setOffline(true);
		const in26h = Date.now() + 26 * 3_600_000;
		// The worker's clock is another: its copies are made older instead.
		await page.evaluate(async (age_ms) => {
			const cache = await caches.open('frostledger-pages');
			for (const request of await cache.keys()) {
				const kept = await cache.match(request, { ignoreVary: true });
				if (!kept) continue;
				const headers = new Headers(kept.headers);
				headers.set('x-made-at', String(Number(headers.get('x-made-at')) - age_ms));
				await cache.put(request, new Response(await kept.blob(), { headers }));
			}
		}, in26h - Date.now());
		const shown = (words: RegExp) => page.getByText(words).filter({ visible: true });
		const wake = await sleep(page);
		for (const path of pages) {
			await page.goto(path);
			await page.locator(`${NOTICE}.old`).waitFor();
			expect(await shown(CALLED_REACHED).count(), path).toBe(0);
		}
		await wake();
		for (const path of pages) {
			await page.goto(path);
			await shown(AS_IT_STOOD).first().waitFor();
			expect(await shown(CALLED_REACHED).count(), path).toBe(0);
		}
		await page.goto(lake);
		await page.locator(`${NOTICE}.old`).filter({ hasText: 'Old copy, as it stood on' }).waitFor();
		for (const load of await page.locator('details > summary').all()) await load.click();
		expect(await page.getByText(CALLED_REACHED).count()).toBe(0);
		await page
			.getByText(/^yesterday|^\d days ago/)
			.first()
			.waitFor();
		await device.close();
	}
);

test.runIf(browserPath)('a clock that is set back makes no kept page younger', async () => {
	await app.start();
	const device = await app.device(PHONE);
	const page = await openAndKeep(device, LAKE);
	await app.stop();
	await device.setOffline(true);
	await page.goto(LAKE);
	await page.locator(`${NOTICE}.kept`).waitFor();
	// A day and more passes on the page in view, and then the clock is set back.
	const now = Date.now();
	const look = async (at: number) => {
		await page.clock.setFixedTime(at);
		await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
	};
	await look(now + 26 * 3_600_000);
	await page.locator(`${NOTICE}.old`).waitFor();
	await look(now);
	expect(await page.locator(NOTICE).getAttribute('class')).toBe('old');
	// Neither is the next page, which the service worker brings: its clock never was ahead.
	await page.goto(`${LAKE}/loads`);
	await page.locator(`${NOTICE}.old`).waitFor();
	// With a connection what it said before counts no more.
	await app.start();
	await device.setOffline(false);
	await openAndKeep(device, LAKE);
	const seen_ms = () =>
		page.evaluate(async () => {
			const kept = await caches.match('/frostledger-clock');
			const { device_ms } = (await kept?.json()) ?? { device_ms: Infinity };
			return device_ms as number;
		});
	await expect.poll(seen_ms, { timeout: 20_000 }).toBeLessThan(now + 3_600_000);
	await device.close();
});

test.runIf(browserPath)(
	'a change that meets another’s is shown with it, and the person chooses',
	async () => {
		await app.start();
		const device = await app.device(PHONE);
		const [reading] = await app.readings('pinder-lake');
		const path = `${LAKE}/readings/${reading?.id}`;
		const page = await openAndKeep(device, LAKE);
		await page.goto(path);
		await page.getByLabel('Remark').waitFor();
		await page.waitForFunction(
			async (key) => (await (await caches.open('frostledger-pages')).match(key)) !== undefined,
			path
		);
		await keptPages(page, [path]);
		await device.setOffline(true);
		await page.getByLabel('Remark').fill('from the phone');
		await page.getByRole('button', { name: 'Store the change' }).click();
		await page.getByText('On this device, not sent yet.').waitFor();
		const address = `/lakes/pinder-lake/readings/${reading?.id}`;
		await app.ask('PATCH', address, { remark: 'from the desk', version: reading?.version });
		await connect(device, page);
		const both = page.getByRole('row', { name: /Remark/ }).first();
		await both.filter({ hasText: 'from the desk' }).filter({ hasText: 'from the phone' }).waitFor();
		await page.getByRole('button', { name: 'Put yours in its place' }).click();
		const stands = () =>
			fetch(app.url(`/api/v1${address}`)).then(
				(response) => response.json() as Promise<{ remark: string }>
			);
		await expect
			.poll(async () => (await stands()).remark, { timeout: 20_000 })
			.toBe('from the phone');
		await device.close();
	}
);

/** Pages on the device; whoever only looks for one makes the cache anew, with nothing in it. */
function keptCount(page: Page): Promise<number> {
	return page.evaluate(async () => {
		const cache = await caches.open('frostledger-pages');
		return (await cache.keys()).length;
	});
}

test.runIf(browserPath)('whoever signs out leaves no page behind', async () => {
	await app.start();
	const device = await app.device(PHONE);
	const page = await openAndKeep(device, LAKE);
	await page.evaluate(() => fetch('/account?/out', { method: 'POST', body: new FormData() }));
	await expect.poll(() => keptCount(page), { timeout: 10_000 }).toBe(0);
	// What was still being fetched for later stays out as well.
	await page.waitForTimeout(2_000);
	expect(await keptCount(page)).toBe(0);
	await device.close();
});

test.runIf(browserPath)(
	'a page tells what is kept here, and forgets all of it when it is asked to',
	async () => {
		await app.start();
		const device = await app.device(PHONE);
		const page = await openAndKeep(device, LAKE);
		await page.goto('/on-this-phone');
		await page.getByRole('row').filter({ hasText: 'Pinder Lake (invented)' }).waitFor();
		await page.getByText('Everything that was entered on this device is on the server.').waitFor();
		await page.getByRole('button', { name: 'Forget all on this device' }).click();
		await page.getByText('Nothing is kept on this device any more.').waitFor();
		const left = await page.evaluate(async () => ({
			caches: await caches.keys(),
			databases: (await indexedDB.databases()).map(({ name }) => name),
			marks: Object.keys(localStorage)
		}));
		expect(left).toEqual({ caches: [], databases: [], marks: [] });
		await device.close();
	}
);

test.runIf(browserPath)(
	'a lake whose page was busy while its keeper came is kept too',
	async () => {
		const device = await app.device(PHONE);
		await app.start();
		// A page that is not calm for longer than its keeper takes to come.
		await device.addInitScript(() => {
			const real = globalThis.setTimeout;
			const slow = (run: () => void, wait_ms?: number) =>
				real(run, wait_ms === 2000 ? 9000 : wait_ms);
			globalThis.setTimeout = slow as typeof setTimeout;
		});
		const page = await device.newPage();
		await page.goto(HOLE);
		await page.evaluate(async () => {
			const { serviceWorker } = navigator;
			const came = new Promise((done) => serviceWorker.addEventListener('controllerchange', done));
			await serviceWorker.register('/service-worker.js', { type: 'module' });
			await came;
		});
		await keptPages(page, [LAKE, HOLE, `${LAKE}/what-if.json`, `${LAKE}/trip`]);
		await device.close();
	}
);
