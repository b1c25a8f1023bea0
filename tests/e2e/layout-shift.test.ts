import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { browserPath, DESK, PHONE } from '../support/browser.ts';
import { MOST_JUMPS, watchJumps } from '../support/jumps.ts';
import { story } from '../support/story.ts';

const app = story({ FROSTLEDGER_REFRESH: 'off' });

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
			expect(sum, `${path}: ${JSON.stringify(jumps)}`).toBeLessThan(MOST_JUMPS);
			await page.context().close();
		}
	});
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
