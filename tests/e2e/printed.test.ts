import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { browserPath } from '../support/browser.ts';
import { lakeWithWinter } from '../support/past-winter.ts';
import { readPdf } from '../support/pdf.ts';
import { story } from '../support/story.ts';

const app = story({ FROSTLEDGER_REFRESH: 'off' });

const PAPERS = { A4: [595, 842], Letter: [612, 792] } as const;

/** Prints a page on both papers, each of which has to hold all of it. */
async function onePage(page: Page) {
	const sheets = [];
	for (const format of ['A4', 'Letter'] as const) {
		const pdf = await readPdf(await page.pdf({ format }));
		const [width, height] = PAPERS[format];
		expect(pdf.pages, format).toBe(1);
		// Chromium rounds paper up to whole points.
		expect(Math.abs(pdf.size_pt[0] - width) + Math.abs(pdf.size_pt[1] - height)).toBeLessThan(3);
		expect(pdf.smallest_pt, format).toBeGreaterThan(7);
		sheets.push(pdf);
	}
	return sheets;
}

test.runIf(browserPath)(
	'a trip sheet is one page with nothing on it, with some weak spots, and with many, in letters as large as fit',
	async () => {
		const id = await lakeWithWinter(app);
		const page = await app.open(`/lakes/${id}/trip`);
		const letters_pt: number[] = [];
		let made = 0;
		for (const count of [0, 6, 24]) {
			for (; made < count; made++)
				await app.ask('POST', `/lakes/${id}/weak-spots`, {
					name: `Weak spot ${made + 1} ${'where the current comes round the point '.repeat(made < 6 ? 1 : 2)}`.trim(),
					kind: 'inletOutlet'
				});
			await page.goto(`/lakes/${id}/trip`);
			const [a4, letter] = await onePage(page);
			for (const { text } of [a4, letter].filter((sheet) => sheet !== undefined)) {
				expect(text).toMatch(/About \d+ cm of ice/);
				expect(text).toMatch(/Ice picks round the neck/);
				expect(text).toMatch(/Who is told/);
				expect(text).toMatch(/A forecast, not a permission/);
				expect(text).not.toMatch(/Put it on the sheet|cm °C/);
				if (count > 0) expect(text).toContain('Inlet or outlet, not known what it carries');
				else expect(text).toContain('None is on the list, which is no sign of there being none.');
			}
			letters_pt.push(a4?.smallest_pt ?? 0);
		}
		expect(letters_pt).toEqual(letters_pt.toSorted((a, b) => b - a));
	}
);

test.runIf(browserPath)(
	'a plan for a track prints as a note of one page with the days that the screen has',
	async () => {
		const base = '/lakes/pinder-lake/sites';
		const track = { name: 'Track to print', kind: 'track', parent: 'main' };
		const { id } = await app.ask<{ id: string }>('POST', base, track);
		const page = await app.open(`${base}/${id}`);
		await page.getByRole('button', { name: 'Work it out' }).click();
		const table = page.getByRole('table', { name: /as it is, and if it is cleared/ });
		await table.waitFor();
		await page.getByRole('link', { name: 'A note to print' }).click();
		await page.getByRole('heading', { name: /^A plan, not done/ }).waitFor();
		const cells = await page.getByRole('table').first().locator('tbody td').allInnerTexts();
		const told = cells
			.map((cell) => cell.replace(/\s+/g, ' ').trim())
			.filter((cell) => cell !== '');
		expect(told.length).toBeGreaterThan(3);
		for (const { text } of await onePage(page)) {
			expect(text).toContain('A plan, not done: Track to print, Pinder Lake (invented)');
			expect(text).toContain('Holes drilled along it, thinnest:');
			// A narrow column breaks words at their hyphens.
			for (const cell of told) expect(text.replace(/- (?=[a-z])/g, '-')).toContain(cell);
			expect(text).not.toMatch(/Print it|Back to the plan/);
			expect(text).not.toMatch(/\bsafe/i);
		}
	}
);
