import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { browserPath, DESK, PHONE } from '../support/browser.ts';
import { story } from '../support/story.ts';

declare global {
	interface Window {
		/** Each jump of what was on the screen, with what jumped. */
		jumps: { value: number; what: string[] }[];
	}
}

const app = story({ FROSTLEDGER_REFRESH: 'off' });

/** Cumulative layout shift; what is widely called good is 0.1. */
const MOST = 0.02;

const LAKE = '/lakes/pinder-lake';
/** Pages with pictures, and how many of them are drawn by script. */
const PAGES: Record<string, number> = {
	[LAKE]: 3,
	[`${LAKE}?asOf=2025-04-08`]: 3,
	[`${LAKE}/early-ice?asOf=2025-12-02`]: 0,
	[`${LAKE}/going-on`]: 0,
	[`${LAKE}/coming-off`]: 0,
	[`${LAKE}/winter`]: 0,
	[`${LAKE}/how-good`]: 0,
	'/': 0
};
const SCREENS = { 'on a phone': PHONE, 'at a desk': DESK };

for (const [place, screen] of Object.entries(SCREENS)) {
	test.runIf(browserPath)(`nothing jumps when pictures and type arrive, ${place}`, async () => {
		for (const [path, charts] of Object.entries(PAGES)) {
			const page = await app.open('about:blank', screen);
			await watchJumps(page);
			// Late, as by a slow line, so that everything else is on the screen before.
			await page.route(/\.(js|woff2)$/, async (route) => {
				await new Promise((done) => setTimeout(done, 300));
				await route.continue();
			});
			await page.goto(path, { waitUntil: 'networkidle' });
			await expect
				.poll(() => page.evaluate(() => performance.getEntriesByName('chart-drawn').length))
				.toBe(charts);
			await toTheEnd(page);
			const jumps = await page.evaluate(() => window.jumps);
			const sum = jumps.reduce((total, { value }) => total + value, 0);
			expect(sum, `${path}: ${JSON.stringify(jumps)}`).toBeLessThan(MOST);
			await page.context().close();
		}
	});
}

for (const [place, screen] of Object.entries(SCREENS)) {
	test.runIf(browserPath)(
		`nothing jumps on home while lakes are worked out, ${place}`,
		async () => {
			const weather = readFileSync('data/demo/weather.csv', 'utf8');
			for (let n = 1; n <= 4; n++) {
				const name = `Lake ${n} to be worked out ${place}`;
				const facts = { latitude: 47.4, longitude: -38.2 - n / 10, water: 'lake' };
				const { id } = await app.ask<{ id: string }>('POST', '/lakes', { name, ...facts });
				await app.ask('POST', `/lakes/${id}/weather`, weather);
				const winter = { freezeUpOn: '2025-11-27' };
				await app.ask('PUT', `/lakes/${id}/winters/2025-26`, winter);
			}
			const page = await app.open('about:blank', screen);
			await watchJumps(page);
			await page.goto('/');
			const waiting = page.getByText('is being worked out');
			expect(await waiting.count()).toBeGreaterThan(1);
			await page.getByRole('heading', { name: /^Told just now/ }).waitFor({ timeout: 60_000 });
			const jumps = await page.evaluate(() => window.jumps);
			const sum = jumps.reduce((total, { value }) => total + value, 0);
			expect(sum, JSON.stringify(jumps)).toBeLessThan(MOST);
			await page.getByRole('button', { name: 'Put in order' }).click();
			await page.getByRole('heading', { name: /^Told just now/ }).waitFor({ state: 'detached' });
			expect(await page.getByRole('heading', { level: 3 }).count()).toBeGreaterThan(4);
		}
	);
}

test.runIf(browserPath)('the watch is awake: what jumps is seen to', async () => {
	const page = await app.open('about:blank', PHONE);
	await watchJumps(page);
	await page.goto('/method', { waitUntil: 'networkidle' });
	await page.evaluate(() => {
		document.querySelector('main')?.prepend(
			Object.assign(document.createElement('div'), {
				style: 'height: 300px'
			})
		);
	});
	await expect.poll(() => page.evaluate(() => window.jumps.length)).toBeGreaterThan(0);
});

function watchJumps(page: Page): Promise<unknown> {
	return page.addInitScript(() => {
		interface Shift extends PerformanceEntry {
			value: number;
			hadRecentInput: boolean;
			sources: { node: Node | null }[];
		}
		window.jumps = [];
		new PerformanceObserver((list) => {
			for (const { value, hadRecentInput, sources } of list.getEntries() as Shift[]) {
				if (hadRecentInput) continue;
				const what = sources.map(({ node }) => node?.textContent?.trim().slice(0, 40) ?? '');
				window.jumps.push({ value, what });
			}
		}).observe({ type: 'layout-shift', buffered: true });
	});
}

/** Screen by screen, as somebody reads, so that what comes late comes under their eyes. */
async function toTheEnd(page: Page): Promise<void> {
	const screens = await page.evaluate(() =>
		Math.ceil(document.documentElement.scrollHeight / innerHeight)
	);
	for (let screen = 1; screen <= screens; screen++) {
		await page.evaluate((to) => window.scrollTo(0, to * innerHeight * 0.8), screen);
		await page.waitForTimeout(60);
	}
	await page.waitForLoadState('networkidle');
}
