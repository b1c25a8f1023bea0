import { expect, test } from 'vitest';
import { browserPath, PHONE } from '../support/browser.ts';
import { drawing, saidThickness, thicknessFigure, unfold } from '../support/read-page.ts';
import { story } from '../support/story.ts';

const app = story();

test.runIf(browserPath)(
	'a first visit finds the invented lake, what its ice carries, and why to doubt it',
	async () => {
		const page = await app.open('/', PHONE);
		await page.getByRole('link', { name: /Pinder Lake \(invented\)/ }).click();

		await page.getByRole('heading', { level: 1, name: /\d+ cm of ice/ }).waitFor();
		expect(await page.title()).toMatch(/^Pinder Lake \(invented\)/);
		await page.getByText(/its weather and its readings are invented/).waitFor();
		const { estimate, lower } = await saidThickness(page);
		expect(estimate).toBeGreaterThan(lower);
		expect(lower).toBeGreaterThan(0);

		await page.getByRole('img', { name: /^From the top: .*white ice.*clear ice/ }).waitFor();
		const canvases = page.locator('canvas');
		expect(await canvases.count()).toBe(3);
		for (const canvas of await canvases.all()) {
			await expect.poll(async () => (await drawing(canvas)).paintedFraction).toBeGreaterThan(0.01);
		}
		expect((await drawing(thicknessFigure(page).locator('canvas'))).colours).toBeGreaterThan(20);
	}
);

test.runIf(browserPath)(
	'each load of the invented lake stands with its reason, and the cautions stand with them',
	async () => {
		const page = await app.open('/lakes/pinder-lake');
		const { loads, cautions } = await app.ask<{
			loads: { name: string; status: string; reason: string }[];
			cautions: { text: string }[];
		}>('GET', '/lakes/pinder-lake/forecast');
		expect(new Set(loads.map(({ status }) => status)).size).toBeGreaterThan(2);

		await unfold(page);
		const table = page.getByRole('region', { name: 'What the charts ask for' });
		const told = plain(await table.innerText());
		for (const { name, reason } of loads) {
			expect(told).toContain(name);
			expect(told).toContain(plain(reason));
		}
		const warned = plain(
			await page.getByRole('region', { name: 'Before anybody goes' }).innerText()
		);
		expect(cautions.length).toBeGreaterThan(3);
		for (const { text } of cautions) expect(warned).toContain(plain(text));
		const standing = page.getByRole('list', { name: 'Loads by where they stand' });
		expect(await standing.getByRole('listitem').count()).toBe(
			new Set(loads.map(({ status }) => status)).size
		);
		expect(await page.locator('body').innerText()).not.toMatch(/\b(un)?safe(ly)?\b/i);
	}
);

/** Without what is grouping only. */
function plain(text: string): string {
	return text.replace(/(?<=\d)[,\s](?=\d{3})/g, '').replace(/\s+/g, ' ');
}
