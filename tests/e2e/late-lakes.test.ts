import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { browserPath, DESK, PHONE } from '../support/browser.ts';
import { startBrowserAt, startingAt } from '../support/clock.ts';
import { MOST_JUMPS, watchJumps } from '../support/jumps.ts';
import { story } from '../support/story.ts';

/** In the winter that the lakes have weather of: out of it there would be nothing to work out. */
const NOW = '2026-02-12T18:00:00Z';
const app = story({ FROSTLEDGER_REFRESH: 'off', ...startingAt(NOW) });

const SCREENS = { 'on a phone': PHONE, 'at a desk': DESK };

for (const [place, screen] of Object.entries(SCREENS)) {
	test.runIf(browserPath)(
		`nothing jumps on home while lakes are worked out, ${place}`,
		async () => {
			const weather = readFileSync('data/demo/weather.csv', 'utf8');
			for (let n = 1; n <= 6; n++) {
				const name = `Lake ${n} to be worked out ${place}`;
				const facts = { latitude: 47.4, longitude: -38.2 - n / 10, water: 'lake' };
				const { id } = await app.ask<{ id: string }>('POST', '/lakes', { name, ...facts });
				await app.ask('POST', `/lakes/${id}/weather`, weather);
				const winter = { freezeUpOn: '2025-11-27' };
				await app.ask('PUT', `/lakes/${id}/winters/2025-26`, winter);
			}
			const page = await app.open('about:blank', screen);
			await startBrowserAt(page.context(), NOW);
			await watchJumps(page);
			await page.goto('/');
			const waiting = page.getByText('is being worked out');
			expect(await waiting.count()).toBeGreaterThan(0);
			await page.getByRole('heading', { name: /^Told just now/ }).waitFor({ timeout: 60_000 });
			const jumps = await page.evaluate(() => window.jumps);
			const sum = jumps.reduce((total, { value }) => total + value, 0);
			expect(sum, JSON.stringify(jumps)).toBeLessThan(MOST_JUMPS);
			await page.getByRole('button', { name: 'Put in order' }).click();
			await page.getByRole('heading', { name: /^Told just now/ }).waitFor({ state: 'detached' });
			expect(await page.getByRole('heading', { level: 3 }).count()).toBeGreaterThan(6);
		}
	);
}
