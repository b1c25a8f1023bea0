/*
 * Draws the app's icons as PNG from their SVG, by the browser of the tests:
 *
 *   npx tsx tests/draw-icons.ts
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { findBrowser } from '../src/commands/bench/phone/find-browser.ts';

const FOLDER = 'static/icons';
const DRAWN = [
	{ from: 'icon.svg', to: 'icon-192.png', size_px: 192 },
	{ from: 'icon.svg', to: 'icon-512.png', size_px: 512 },
	{ from: 'icon-maskable.svg', to: 'icon-maskable-512.png', size_px: 512 },
	// A phone that rounds the corners itself.
	{ from: 'icon-maskable.svg', to: 'apple-touch-icon.png', size_px: 180 }
];

const { path, environment } = await findBrowser();
if (!path) throw new Error('no browser on this machine: install Chromium or Chrome');
const browser = await chromium.launch({
	executablePath: path,
	args: ['--no-sandbox', '--disable-gpu'],
	env: { ...process.env, ...environment } as Record<string, string>
});
try {
	for (const { from, to, size_px } of DRAWN) {
		const page = await browser.newPage({ viewport: { width: size_px, height: size_px } });
		const svg = readFileSync(`${FOLDER}/${from}`, 'utf8');
		await page.setContent(`<style>body{margin:0}svg{display:block;width:100vw}</style>${svg}`);
		writeFileSync(`${FOLDER}/${to}`, await page.screenshot({ omitBackground: true }));
		await page.close();
	}
} finally {
	await browser.close();
}
