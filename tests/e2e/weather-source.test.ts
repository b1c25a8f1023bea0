import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SqliteFile from 'libsql';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bringAxe, overhang_px, violations } from '../support/axe.ts';
import { browserPath, PHONE } from '../support/browser.ts';
import { localWeather, type LocalWeather } from '../support/local-weather.ts';
import { drawing, thicknessFigure } from '../support/read-page.ts';
import { story } from '../support/story.ts';

const folder = mkdtempSync(join(tmpdir(), 'frostledger-source-'));
const app = story({
	FROSTLEDGER_DATA: folder,
	FROSTLEDGER_REFRESH: 'off',
	FROSTLEDGER_SOURCE_HOSTS: '127.0.0.1'
});
let service: LocalWeather;

beforeAll(async () => {
	service = await localWeather();
});
afterAll(async () => {
	await service.close();
	rmSync(folder, { recursive: true, force: true });
});

/** A lake by the Atlantic that froze over three weeks ago. */
async function frozenLake(): Promise<string> {
	const place = { latitude: 47.4, longitude: -38.2, timeZone: 'UTC' };
	const water = { area_km2: 2, meanDepth_m: 4, water: 'lake' };
	const facts = { name: 'Tarn of the Source', ...place, ...water };
	const { id } = await app.ask<{ id: string }>('POST', '/lakes', facts);
	const at = new Date(Date.now() - 21 * 86_400_000);
	const winter = at.getUTCFullYear() - (at.getUTCMonth() < 7 ? 1 : 0);
	const name = `${winter}-${String((winter + 1) % 100).padStart(2, '0')}`;
	const freezeUpOn = at.toISOString().slice(0, 10);
	await app.ask('PUT', `/lakes/${id}/winters/${name}`, { freezeUpOn });
	return id;
}

/** What the page of the lake says of its weather, and below its chart. */
async function lakePage(page: Page, id: string) {
	await page.goto(`/lakes/${id}`);
	const text = await page.locator('main').innerText();
	const caption = await thicknessFigure(page).innerText();
	return { text, isForecastDrawn: /by forecast/.test(caption) };
}

async function refresh(page: Page, id: string) {
	const before = service.asked;
	await page.goto(`/lakes/${id}/weather`);
	await page.getByRole('button', { name: 'Refresh now' }).click();
	await expect.poll(() => service.asked).toBeGreaterThan(before);
	await expect
		.poll(async () => {
			const state = await app.ask<{ isRunning: boolean }>('GET', `/lakes/${id}/refresh`);
			return state.isRunning;
		})
		.toBe(false);
	await page.goto(`/lakes/${id}/weather`);
}

/** As if so many hours had passed since the last forecast came. */
function letForecastAge(hours: number): void {
	const file = new SqliteFile(join(folder, 'frostledger.db'));
	try {
		file.pragma('busy_timeout = 5000');
		file.exec(`UPDATE forecast_issue
			SET issued_at = strftime('%Y-%m-%dT%H:%M:%fZ', issued_at, '-${hours} hours')`);
	} finally {
		file.close();
	}
}

test.runIf(browserPath)(
	'a source is set up from nothing, its forecast appears, fails with a word, and recovers',
	async () => {
		const id = await frozenLake();
		const page = await app.open(`/lakes/${id}/weather`);
		await page.getByRole('link', { name: 'Set up a source by its address' }).click();
		await page.getByLabel('Address', { exact: true }).fill(service.address);
		await page.getByRole('button', { name: 'Try it' }).click();
		await page.getByRole('heading', { name: 'It was understood' }).waitFor();
		await page.getByText('Read as the air temperature in °C, precipitation in mm.').waitFor();
		expect(await page.getByLabel('Whose data they are').inputValue()).toContain('127.0.0.1');
		await page.getByLabel('Name', { exact: true }).fill('Ridge Station');
		await page.getByLabel('Whose data they are').fill('Weather by Ridge Station');
		await page.getByLabel('Not again for the same lake within').fill('0');
		await page.getByLabel('Use it for the lake above').check();
		await page.getByRole('button', { name: 'Store the source' }).click();
		await page.getByText('Ridge Station is in use here.').waitFor();
		await page.getByText(/issued 3 hours ago, up to/).waitFor();

		const well = await lakePage(page, id);
		expect(well.isForecastDrawn).toBe(true);
		expect(well.text).toMatch(/Last observation\s+3 hours ago/);
		expect(well.text).toMatch(/Forecast\s+issued 3 hours ago, up to/);
		expect(well.text).toContain('Weather by Ridge Station');
		const canvas = thicknessFigure(page).locator('canvas');
		await expect.poll(async () => (await drawing(canvas)).paintedFraction).toBeGreaterThan(0.01);
		await page.goto('/');
		const card = page.getByRole('article').filter({ hasText: 'Tarn of the Source' });
		await expect
			.poll(() => card.innerText(), { timeout: 20_000 })
			.toMatch(/Observed 3 hours ago\. Forecast issued 3 hours ago/);
		expect(await card.innerText()).toContain('Weather by Ridge Station');

		service.mood = 'failing';
		await refresh(page, id);
		await refresh(page, id);
		await page.getByText(/2 times in a row: 127\.0\.0\.1 has trouble of its own \(503\)/).waitFor();
		const broken = await lakePage(page, id);
		expect(broken.text).toContain('Ridge Station has failed 2 times in a row');
		expect(broken.isForecastDrawn).toBe(true);

		letForecastAge(30);
		const stale = await lakePage(page, id);
		expect(stale.isForecastDrawn).toBe(false);
		expect(stale.text).toMatch(/issued 33 hours ago: too old, not used/);
		expect(stale.text).toContain('The newest forecast was issued 33 hours ago');
		await page.goto('/');
		await expect
			.poll(() => card.innerText(), { timeout: 20_000 })
			.toMatch(/issued 33 hours ago: too old, not used/);
		expect(await card.innerText()).toContain('A weather source fails.');

		service.mood = 'page';
		await refresh(page, id);
		await page.getByText(/3 times in a row: .*web page/).waitFor();

		service.mood = 'well';
		await refresh(page, id);
		await page.getByText(/issued 3 hours ago, up to/).waitFor();
		expect(await page.locator('main').innerText()).not.toMatch(/times in a row|Needs a look/);
		const mended = await lakePage(page, id);
		expect(mended.isForecastDrawn).toBe(true);
		expect(mended.text).not.toMatch(/times in a row|too old/);

		await page.goto(`/sources/log?lake=${id}`);
		const log = await page.locator('main').innerText();
		expect(log).toContain('has trouble of its own (503)');
		expect(log).toContain('web page');
	}
);

test.runIf(browserPath)(
	'the pages of sources are wide enough for a phone, and axe finds nothing',
	async () => {
		const page = await app.open('/sources', PHONE);
		const lakes = ['/lakes/tarn-of-the-source', '/lakes/tarn-of-the-source/weather', '/'];
		const own = ['/sources/ridge-station', '/sources/ridge-station/addresses/0'];
		for (const path of ['/sources', '/sources/log', '/sources/new', ...own, ...lakes]) {
			await page.goto(path);
			expect(await overhang_px(page), path).toBe(0);
			await bringAxe(page);
			expect(await violations(page), path).toEqual([]);
		}
	}
);
