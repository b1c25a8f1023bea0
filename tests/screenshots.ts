/*
 * Takes a picture of every page, on a phone, a tablet and a desk, by day and by night:
 *
 *   npx tsx tests/screenshots.ts FOLDER [word that the names hold]
 *
 * Of the invented lake and of what it lacks, so that they can be looked at one by one. With `--readme`
 * in place of a folder it takes those of the README, in `data/pictures`.
 */
import { mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { ensureBuilt } from '../src/commands/start/build.ts';
import { startApp } from './support/app.ts';
import { findBrowser } from '../src/commands/bench/phone/find-browser.ts';
import { PICTURED } from './support/pictured-pages.ts';
import { LARGEST_bytes, README_PICTURES } from './support/readme-pictures.ts';

const WIDTHS = [360, 768, 1440];
const SCHEMES = ['light', 'dark'] as const;
const SETTLES_ms = 500;

const README = '--readme';
const [asked, wanted = ''] = process.argv.slice(2);
const folder = asked === README ? join('data', 'pictures') : asked;
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
	if (asked === README) await takeReadme(browser);
	else
		for (const width of WIDTHS) for (const scheme of SCHEMES) await takeAll(browser, width, scheme);
} finally {
	await browser.close();
	await app.stop();
}

async function takeAll(from: Browser, width: number, colorScheme: 'light' | 'dark') {
	const page = await openPage(from, { width, height: width < 700 ? 740 : 900 }, colorScheme);
	for (const [name, address] of Object.entries(PICTURED)) {
		if (!name.includes(wanted)) continue;
		await take(page, address, `${name}-${width}-${colorScheme}`, true);
	}
	await page.context().close();
}

async function takeReadme(from: Browser) {
	for (const { name, address, width, height, scheme } of README_PICTURES) {
		const page = await openPage(from, { width, height }, scheme);
		// As somebody sees it who comes back: what is worked out late comes in a group of its own.
		await visit(page, address);
		const file = await take(page, address, name, false);
		const { size } = statSync(file);
		if (size > LARGEST_bytes) throw new Error(`${file} has ${size} bytes: make it smaller`);
		await page.context().close();
	}
}

async function openPage(
	from: Browser,
	viewport: { width: number; height: number },
	colorScheme: 'light' | 'dark'
): Promise<Page> {
	const context = await from.newContext({
		viewport,
		colorScheme,
		reducedMotion: 'reduce',
		baseURL: app.url
	});
	// As on a phone that has been here before: on its very first page the type stands in.
	await context.addInitScript(() => {
		if (location.protocol === 'http:') localStorage.setItem('frostledger-type', 'here');
	});
	return context.newPage();
}

async function take(page: Page, address: string, name: string, fullPage: boolean): Promise<string> {
	await visit(page, address);
	const file = join(folder ?? '.', `${name}.png`);
	await page.screenshot({ path: file, fullPage });
	process.stdout.write(`${file}\n`);
	return file;
}

async function visit(page: Page, address: string): Promise<void> {
	await page.goto(address, { waitUntil: 'networkidle' });
	// Home fills in what is worked out by then.
	await page.waitForFunction(() => !document.body.innerText.includes('is being worked out'));
	await page.waitForTimeout(SETTLES_ms);
}
