import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { bringAxe, LOOKS, overhang_px, violations } from '../support/axe.ts';
import { browserPath } from '../support/browser.ts';
import { csvOf, FROZE_OVER, lakeWithWinter } from '../support/past-winter.ts';
import { unfold } from '../support/read-page.ts';
import { story, type Story } from '../support/story.ts';

const app = story();

const PAGES: Record<string, (page: Page, app: Story) => Promise<unknown>> = {
	'the lakes': (page) => page.goto('/'),
	'the method': (page) => page.goto('/method'),
	'what is stored': (page) => page.goto('/storage'),
	'a file of lakes that is refused': async (page) => {
		await page.goto('/storage/bring');
		const buffer = Buffer.from('no zip');
		const file = { name: 'lakes.zip', mimeType: 'application/zip', buffer };
		await page.getByLabel('The zip file').setInputFiles(file);
		await page.getByRole('button', { name: 'Check the file' }).click();
		await page.getByRole('alert').waitFor();
	},
	'a page that is not there': (page) => page.goto('/nowhere'),
	'the invented lake': (page) => page.goto('/lakes/pinder-lake'),
	'something tried out': async (page) => {
		await page.goto('/lakes/pinder-lake');
		const part = page.getByRole('region', { name: 'What if?' });
		await part.scrollIntoViewIfNeeded();
		await part.getByLabel('Air from today on').press('End');
		await part.getByText('Estimated anew.').waitFor();
	},
	'a lake past its weather': (page) => page.goto('/lakes/pinder-lake?asOf=2026-02-28'),
	'a lake without weather': async (page, app) =>
		page.goto(`/lakes/${await lakeWithWinter(app, '')}`),
	'its early ice before freeze-up': (page) =>
		page.goto('/lakes/pinder-lake/early-ice?asOf=2025-11-18'),
	'its young ice': (page) => page.goto('/lakes/pinder-lake/early-ice?asOf=2025-12-02'),
	'when loads are expected': (page) => page.goto('/lakes/pinder-lake/going-on'),
	'its early ice in midwinter': (page) => page.goto('/lakes/pinder-lake/early-ice'),
	'coming off in midwinter': (page) => page.goto('/lakes/pinder-lake/coming-off'),
	'coming off in a past thaw': (page) =>
		page.goto('/lakes/pinder-lake/coming-off?winter=2024-25&asOf=2025-04-05'),
	'its freeze-up': (page) => page.goto('/lakes/pinder-lake/winter'),
	'its loads': (page) => page.goto('/lakes/pinder-lake/loads'),
	'a load of its own': ownLoad,
	'its readings': (page) => page.goto('/lakes/pinder-lake/readings'),
	'one reading': async (page) => {
		await page.goto('/lakes/pinder-lake/readings');
		await page
			.getByRole('link', { name: /^Edit the reading/ })
			.first()
			.click();
		await page.getByRole('button', { name: 'Store the change' }).waitFor();
	},
	'a hole beside it': (page) => page.goto('/lakes/pinder-lake/at-the-hole'),
	'a hole just stored': async (page) => {
		await page.goto('/lakes/pinder-lake/at-the-hole');
		await page.getByLabel(/^Whole ice/).fill('50');
		await page.getByRole('button', { name: 'Store this hole' }).click();
		await page.getByRole('status', { name: 'The hole just stored' }).waitFor();
	},
	'its sites': sitesOf,
	'a track with a plan': async (page, app) => {
		await sitesOf(page, app);
		await page.getByRole('link', { name: /^Its work, and a plan/ }).click();
		await page.getByRole('button', { name: 'Work it out' }).click();
		await page.getByRole('heading', { name: 'What a track brings with it' }).waitFor();
	},
	'a plan as a note': async (page, app) => {
		await PAGES['a track with a plan']?.(page, app);
		await page.getByRole('link', { name: 'A note to print' }).click();
		await page.getByRole('heading', { name: /^A plan, not done/ }).waitFor();
	},
	'a deleted reading': async (page, app) => {
		const id = await lakeWithWinter(app);
		const reading = { on: FROZE_OVER, kind: 'measured', holes: [{ total_m: 0.3 }] };
		await app.ask('POST', `/lakes/${id}/readings`, reading);
		await page.goto(`/lakes/${id}/readings`);
		await page.getByRole('button', { name: /^Delete the reading/ }).click();
		await page.getByText('The reading is deleted.').waitFor();
	},
	'a refused lake': async (page) => {
		await page.goto('/lakes/new');
		await page.getByRole('button', { name: 'Make the lake' }).click();
		await page.getByRole('alert').waitFor();
	},
	'a file before it is taken in': async (page, app) => {
		await page.goto(`/lakes/${await lakeWithWinter(app, '')}/weather`);
		const buffer = Buffer.from(csvOf(['air', 'water']));
		const file = { name: 'invented.csv', mimeType: 'text/csv', buffer };
		await page.getByLabel(/CSV file/).setInputFiles(file);
		await page.getByText('A daily record in').waitFor();
	},
	'a file taken in': async (page, app) => {
		await PAGES['a file before it is taken in']?.(page, app);
		await page.getByRole('button', { name: 'Import' }).click();
		await page.getByRole('heading', { name: / stored$/ }).waitFor();
	},
	'the lake itself': (page) => page.goto('/lakes/pinder-lake/edit'),
	'a deleted lake': async (page, app) => {
		await page.goto(`/lakes/${await lakeWithWinter(app, '')}/edit`);
		await page.getByRole('checkbox', { name: /Yes, delete/ }).check();
		await page.getByRole('button', { name: 'Delete the lake' }).click();
		await page.getByRole('button', { name: /^Undo/ }).first().waitFor();
	}
};

for (const [name, visit] of Object.entries(PAGES)) {
	test.runIf(browserPath)(
		`${name}: nothing that axe finds, on a phone, at a desk, by night`,
		async () => {
			const page = await app.open('about:blank', { reducedMotion: 'reduce' });
			await visit(page, app);
			await unfold(page);
			await bringAxe(page);
			for (const { width, colorScheme } of LOOKS) {
				await page.setViewportSize({ width, height: 800 });
				await page.emulateMedia({ colorScheme });
				expect(await violations(page), `${width} px, ${colorScheme}`).toEqual([]);
				expect(await overhang_px(page), `${width} px wide, scrolled sideways`).toBe(0);
			}
		}
	);
}

async function sitesOf(page: Page, { ask }: Story) {
	const base = '/lakes/pinder-lake/sites';
	const known = await ask<{ id: string }[]>('GET', base);
	for (const [name, kind, parent] of [
		['Bay of the tests', 'bay', null],
		['Track of the tests', 'track', 'main']
	]) {
		const id = String(name).toLowerCase().replaceAll(' ', '-');
		if (!known.some((site) => site.id === id)) await ask('POST', base, { name, kind, parent });
	}
	await page.goto(base);
}

async function ownLoad(page: Page) {
	await page.goto('/lakes/pinder-lake/loads');
	await page.getByLabel('Name').fill('Sled of the tests');
	await page.getByLabel(/^Mass/).fill('250');
	await page.getByRole('button', { name: 'Add it' }).click();
	await page.getByText('Stored.', { exact: true }).waitFor();
	await page.getByRole('link', { name: /^Edit/ }).first().click();
	await page.getByRole('button', { name: /^Store/ }).waitFor();
}
