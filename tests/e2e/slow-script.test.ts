import { expect, test } from 'vitest';
import { browserPath, PHONE } from '../support/browser.ts';
import { FROZE_OVER, lakeWithWinter } from '../support/past-winter.ts';
import { story } from '../support/story.ts';

const app = story();

test.runIf(browserPath)('what is typed before the script arrives stays', async () => {
	const id = await lakeWithWinter(app);
	const page = await app.open('/', PHONE);
	let letThrough = () => {};
	const arrived = new Promise<void>((done) => (letThrough = done));
	await page.route(/\.js$/, async (route) => {
		await arrived;
		await route.continue();
	});
	await page.goto(`/lakes/${id}/readings`, { waitUntil: 'commit' });
	await page.getByLabel('Day', { exact: true }).fill(FROZE_OVER);
	await page.getByRole('radio', { name: /^Went through/ }).check();
	await page.locator('select[name=core]').selectOption('candled');
	const script = page.waitForResponse(/entry\/app\..*\.js$/);
	letThrough();
	await script;
	// The page answers by script once the button adds a hole without a new page.
	await page.getByRole('button', { name: 'Add a hole' }).click();
	await page.getByRole('group', { name: 'Hole 2' }).waitFor();
	expect(await page.getByLabel('Day', { exact: true }).inputValue()).toBe(FROZE_OVER);
	expect(await page.getByRole('radio', { name: /^Went through/ }).isChecked()).toBe(true);
	expect(await page.locator('select[name=core]').inputValue()).toBe('candled');
});
