import { expect, test } from 'vitest';
import { browserPath, PHONE } from '../support/browser.ts';
import { saidThickness, unfold } from '../support/read-page.ts';
import { story } from '../support/story.ts';

const app = story();

test.runIf(browserPath)(
	'inches, °F and pounds chosen on one page hold on every other, and after a reload',
	async () => {
		const page = await app.open('/lakes/pinder-lake', PHONE);
		const metric = await saidThickness(page);
		expect(metric.text).toMatch(/\d cm of ice/);

		await page.goto('/lakes/pinder-lake/readings');
		await page.getByLabel('Whole ice, cm').waitFor();
		await page.getByRole('button', { name: 'in °F' }).click();
		await page.getByLabel('Whole ice, in').waitFor();
		expect(new URL(page.url()).pathname).toBe('/lakes/pinder-lake/readings');
		await page.getByRole('button', { name: 'lb', exact: true }).click();
		await page.getByRole('button', { name: 'lb', exact: true, pressed: true }).waitFor();

		await page.goto('/lakes/pinder-lake');
		await page.reload();
		const imperial = await saidThickness(page);
		expect(imperial.text).toMatch(/\d in(ch(es)?)? of ice/);
		expect(Math.abs(imperial.estimate - metric.estimate / 2.54)).toBeLessThan(0.75);
		await unfold(page);
		const said = await page.locator('main').innerText();
		expect(said).toMatch(/[\d,]+ lb/);
		expect(said).toMatch(/\d °F/);
		expect(said).not.toMatch(/\d °C|\d kg\b(?!\/)|\d cm\b/);

		await page.getByRole('button', { name: 'cm °C' }).click();
		await page.getByRole('button', { name: 'cm °C', pressed: true }).waitFor();
		expect((await saidThickness(page)).text).toBe(metric.text);
	}
);
