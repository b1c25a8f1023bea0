import { expect, test } from 'vitest';
import { browserPath, PHONE } from '../support/browser.ts';
import { story } from '../support/story.ts';

const app = story();
const LAKE = '/lakes/pinder-lake';

test.runIf(browserPath)(
	'a track is made, its work is logged, its page differs, and a plan for it is stored nowhere',
	async () => {
		const page = await app.open(`${LAKE}/sites`, PHONE);
		await page.getByRole('heading', { level: 1, name: /^3 sites/ }).waitFor();
		await page.getByLabel('Name').fill('Track of the tests');
		await page.getByRole('radio', { name: /^Track/ }).check();
		await page.getByRole('button', { name: 'Make it' }).click();
		await page.getByText('Track of the tests is there.').waitFor();
		await page.getByText('None is logged: until then it is the ice of Main.').waitFor();

		await page.getByRole('link', { name: /^Log work/ }).click();
		await page.getByText('Snow was cleared').click();
		const form = page.getByRole('form', { name: 'Snow was cleared' });
		await form.getByLabel('Day').fill('2026-01-10');
		await form.getByLabel(/^Snow that was left/).fill('0');
		await form.getByRole('button', { name: 'Add it' }).click();
		await page.getByText('Snow cleared on 10 Jan 2026, 0 cm left').waitFor();

		// The links keep the site, and the chooser leads to the other.
		await page.getByRole('link', { name: /^Pinder Lake/ }).click();
		await page.waitForURL(/pinder-lake\?site=track-of-the-tests$/);
		const chooser = page.getByRole('navigation', { name: 'Site', exact: true });
		await chooser.waitFor();
		await page.getByRole('heading', { level: 1, name: /cm of ice/ }).waitFor();
		const thick = () => page.getByRole('heading', { level: 1 }).innerText();
		const track = await thick();
		await chooser.getByRole('link', { name: 'Main' }).click();
		await expect.poll(thick).not.toBe(track);

		const events = () => app.ask('GET', `${LAKE}/winters/2025-26?site=track-of-the-tests`);
		const before = await events();
		await page.goto(`${LAKE}/sites/track-of-the-tests`);
		await page.getByRole('button', { name: 'Work it out' }).click();
		const table = page.getByRole('table', { name: /as it is, and if it is cleared/ });
		await table.waitFor();
		expect(await table.getByRole('row').count()).toBeGreaterThan(4);
		expect(await events()).toEqual(before);
	}
);

test.runIf(browserPath)('without script a site is deleted and brought back', async () => {
	const page = await app.open(`${LAKE}/sites`, { ...PHONE, javaScriptEnabled: false });
	await page.getByLabel('Name').fill('Bay of the tests');
	await page.getByRole('button', { name: 'Make it' }).click();
	await page.getByRole('button', { name: 'Delete Bay of the tests' }).click();
	await page.getByText('Bay of the tests is deleted, with its winters and readings.').waitFor();
	await page.getByRole('button', { name: 'Undo' }).first().click();
	await page.getByRole('heading', { level: 2, name: 'Bay of the tests' }).waitFor();
});
