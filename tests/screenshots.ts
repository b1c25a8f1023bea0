/*
 * Takes a picture of every page, on a phone, a tablet and a desk, by day and by night:
 *
 *   npx tsx tests/screenshots.ts FOLDER [word that the names hold]
 *
 * Of the invented lake and of what it lacks, so that they can be looked at one by one.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Browser } from 'playwright-core';
import { ensureBuilt } from '../src/commands/start/build.ts';
import { startApp } from './support/app.ts';
import { findBrowser } from '../src/commands/bench/phone/find-browser.ts';
import { PICTURED } from './support/pictured-pages.ts';

const WIDTHS = [360, 768, 1440];
const SCHEMES = ['light', 'dark'] as const;
const SETTLES_ms = 500;

const [folder, wanted = ''] = process.argv.slice(2);
if (!folder) throw new Error('name a folder for the pictures: npx tsx tests/screenshots.ts FOLDER');
const { path, environment } = await findBrowser();
if (!path) throw new Error('no browser on this machine: install Chromium or Chrome');

mkdirSync(folder, { recursive: true });
await ensureBuilt({ quiet: true });
const app = await startApp({ FROSTLEDGER_REFRESH: 'off' });
const browser = await chromium.launch({
	executablePath: path,
	args: ['--no-sandbox', '--disable-gpu'],
	env: { ...process.env, ...environment } as Record<string, string>
});
try {
	for (const width of WIDTHS) for (const scheme of SCHEMES) await takeAll(browser, width, scheme);
} finally {
	await browser.close();
	await app.stop();
}

async function takeAll(from: Browser, width: number, colorScheme: 'light' | 'dark') {
	const viewport = { width, height: width < 700 ? 740 : 900 };
	const context = await from.newContext({
		viewport,
		colorScheme,
		reducedMotion: 'reduce',
		baseURL: app.url
	});
	const page = await context.newPage();
	for (const [name, address] of Object.entries(PICTURED)) {
		if (!name.includes(wanted)) continue;
		await page.goto(address, { waitUntil: 'networkidle' });
		await page.waitForTimeout(SETTLES_ms);
		const file = join(folder ?? '.', `${name}-${width}-${colorScheme}.png`);
		await page.screenshot({ path: file, fullPage: true });
		process.stdout.write(`${file}\n`);
	}
	await context.close();
}
