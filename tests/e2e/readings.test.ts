import { expect, test } from 'vitest';
import { browserPath, PHONE } from '../support/browser.ts';
import { lakeWithWinter, LAST_WEATHER, lastDay_cm } from '../support/past-winter.ts';
import { drawing, saidThickness, thicknessFigure, unfold } from '../support/read-page.ts';
import { story } from '../support/story.ts';

const app = story();

test.runIf(browserPath)(
	'a reading moves the estimate and is marked on the chart; deleted, it can be brought back',
	async () => {
		const id = await lakeWithWinter(app);
		const before = await lastDay_cm(app, id);
		const drilled_cm = Math.round(0.8 * before.estimate_cm);

		const page = await app.open(`/lakes/${id}/readings`, PHONE);
		await page.getByLabel('Day', { exact: true }).fill(LAST_WEATHER);
		await page.getByLabel('Place', { exact: true }).fill('Off the old boathouse');
		const add = page.getByRole('button', { name: 'Add a hole' });
		await add.click();
		await page.getByRole('group', { name: 'Hole 2' }).waitFor();
		await add.click();
		await page.getByRole('group', { name: 'Hole 3' }).waitFor();
		for (const hole of [1, 2, 3]) {
			const fields = page.getByRole('group', { name: `Hole ${hole}` });
			await fields.getByLabel('Whole ice').fill(String(drilled_cm));
		}
		await page.getByRole('button', { name: 'Store the reading' }).click();
		await page.getByText(/^Stored\. The estimate/).waitFor();

		const shown = () => shownOn(page, id);
		const moved = await shown();
		const away_cm = Math.abs(before.estimate_cm - drilled_cm);
		expect(Math.abs(moved.estimate - drilled_cm)).toBeLessThan(away_cm / 2);
		await page
			.getByText(/1 reading\b/)
			.first()
			.waitFor();
		const keys = thicknessFigure(page).getByRole('list').first();
		expect(await keys.innerText()).toMatch(/reading/);
		const table = thicknessFigure(page).getByRole('table', { name: /^Readings/ });
		await unfold(page);
		expect(await table.innerText()).toContain('Off the old boathouse');

		await page.goto(`/lakes/${id}/readings`);
		await page.getByRole('button', { name: /^Delete the reading/ }).click();
		await page.getByText('The reading is deleted.').waitFor();
		expect((await shown()).estimate).toBeCloseTo(before.estimate_cm, -0.5);
		await page.goBack();
		await page.getByRole('button', { name: 'Undo' }).click();
		await page.getByText('Off the old boathouse').first().waitFor();
		const again = await shown();
		expect(again).toEqual(moved);
	}
);

/** What the lake's page says and draws, once it is drawn. */
async function shownOn(page: Awaited<ReturnType<typeof app.open>>, id: string) {
	await page.goto(`/lakes/${id}`);
	const canvas = thicknessFigure(page).locator('canvas');
	await expect.poll(async () => (await drawing(canvas)).paintedFraction).toBeGreaterThan(0.01);
	return saidThickness(page);
}
