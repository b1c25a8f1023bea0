import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { browserPath, PHONE } from '../support/browser.ts';
import { sum, weighScripts } from '../support/page-weight.ts';
import { lakeWithWinter } from '../support/past-winter.ts';
import { drawing, thicknessFigure } from '../support/read-page.ts';
import { story } from '../support/story.ts';

declare global {
	interface Window {
		/** What a page was seen to do: its longest task, and each word of its progress. */
		seen: { longest_ms: number; told: string[] };
	}
}

const app = story();

test.runIf(browserPath)(
	'the page of a lake takes less than 150 kB of compressed script, charts included',
	async () => {
		const page = await app.open('about:blank', PHONE);
		const weigh = weighScripts(page);
		await page.goto('/lakes/pinder-lake');
		const canvas = thicknessFigure(page).locator('canvas');
		await expect.poll(async () => (await drawing(canvas)).paintedFraction).toBeGreaterThan(0.01);
		const sizes = await weigh();
		expect(sizes.size).toBeGreaterThan(5);
		const size_bytes = sum(sizes);
		expect(size_bytes).toBeGreaterThan(60_000);
		expect(size_bytes).toBeLessThan(150_000);
	}
);

const HOURS = 200_000;

/** Invented, without a year's course: only the number of its rows matters. */
function manyHours(): string {
	const lines = ['time,temperature_c,precip_mm'];
	for (let hour = 0; hour < HOURS; hour++) {
		const on = addDays('2001-01-01', Math.floor(hour / 24));
		lines.push(`${on}T${String(hour % 24).padStart(2, '0')}:00:00Z,${-(hour % 17)}.5,0.1`);
	}
	return lines.join('\n');
}

test.runIf(browserPath)(
	'200,000 hours come in with their progress shown, and the page answers all the while',
	async () => {
		const id = await lakeWithWinter(app, '');
		const page = await app.open(`/lakes/${id}/weather`);
		await page.evaluate(() => {
			const seen: Window['seen'] = { longest_ms: 0, told: [] };
			window.seen = seen;
			new PerformanceObserver((list) => {
				for (const { duration } of list.getEntries()) {
					seen.longest_ms = Math.max(seen.longest_ms, duration);
				}
			}).observe({ type: 'longtask', buffered: true });
			new MutationObserver(() => {
				const text = document.querySelector('progress')?.labels[0]?.textContent.trim();
				if (text && seen.told.at(-1) !== text) seen.told.push(text);
			}).observe(document.body, { subtree: true, childList: true, characterData: true });
		});
		// From the disk: the bytes of a file given as such would pass through the page's own thread.
		const folder = mkdtempSync(join(tmpdir(), 'frostledger-hours-'));
		onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
		const file = join(folder, 'hours.csv');
		writeFileSync(file, manyHours());
		await page.getByLabel(/CSV file/).setInputFiles(file);
		await page.getByText('An hourly record in').or(page.getByText('A hourly record in')).waitFor();
		await page.getByRole('button', { name: 'Import' }).click();
		await page.getByRole('progressbar').waitFor();
		await page.getByRole('heading', { name: '200,000 hours stored' }).waitFor({ timeout: 60_000 });

		const seen = await page.evaluate(() => window.seen);
		expect(seen.longest_ms).toBeLessThan(1000);
		const counts = seen.told.flatMap((text) => /^([\d,\s]+) rows read/.exec(text)?.[1] ?? []);
		expect(new Set(counts).size).toBeGreaterThan(3);

		// The watch was awake.
		await page.evaluate(() => {
			setTimeout(() => {
				const from_ms = performance.now();
				while (performance.now() < from_ms + 100);
			});
		});
		await expect.poll(() => page.evaluate(() => window.seen.longest_ms)).toBeGreaterThan(90);
	}
);
