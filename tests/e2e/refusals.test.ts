import { expect, test } from 'vitest';
import { browserPath, PHONE } from '../support/browser.ts';
import { FROZE_OVER, lakeWithWinter } from '../support/past-winter.ts';
import { story } from '../support/story.ts';

const app = story();

const BROKEN = [
	{
		name: 'answer.csv',
		buffer: Buffer.from('<!doctype html><html><body>Please log in</body></html>'),
		says: /HTML|web page/i
	},
	{
		name: 'photo.csv',
		buffer: Buffer.from(Array.from({ length: 4096 }, (_, index) => (index * 37) % 256)),
		says: /binary|not text/i
	},
	{ name: 'header.csv', buffer: Buffer.from('date,tmean_c\n'), says: /no (row|data)|header/i }
];

test.runIf(browserPath)('files that cannot be read are refused with a remedy', async () => {
	const id = await lakeWithWinter(app, '');
	const page = await app.open(`/lakes/${id}/weather`);
	for (const { name, buffer, says } of BROKEN) {
		const file = { name, mimeType: 'text/csv', buffer };
		await page.locator('input[type=file]').setInputFiles(file);
		await page.getByRole('heading', { name: `What ${name} is taken for` }).waitFor();
		const told = await page.getByRole('form', { name: 'Take in a file' }).innerText();
		expect(told, name).toMatch(says);
		expect(await page.getByRole('button', { name: 'Import' }).count(), name).toBe(0);
	}
	await page.reload();
	await page.getByText('No weather yet.').waitFor();
	expect(await app.ask('GET', `/lakes/${id}/weather`)).toMatchObject({ from: null, to: null });
});

test.runIf(browserPath)('a refused form says what to mend and keeps what was typed', async () => {
	const id = await lakeWithWinter(app);
	const page = await app.open('/lakes/new', PHONE);
	await page.getByLabel('Name').fill('Half a lake');
	await page.getByLabel('Latitude').fill('ninety');
	await page.getByLabel('Mean depth').fill('7,5');
	await page.getByRole('button', { name: 'Make the lake' }).click();
	await page.getByRole('alert').getByText('Not stored. Please mend:').waitFor();
	expect(await page.getByLabel('Name').inputValue()).toBe('Half a lake');
	expect(await page.getByLabel('Latitude').inputValue()).toBe('ninety');
	expect(await page.getByLabel('Mean depth').inputValue()).toBe('7,5');
	const lakes = await app.ask<{ name: string }[]>('GET', '/lakes');
	expect(JSON.stringify(lakes)).not.toContain('Half a lake');

	await page.goto(`/lakes/${id}/readings`);
	await page.getByLabel('Day', { exact: true }).fill(FROZE_OVER);
	await page.getByLabel('Place', { exact: true }).fill('By the inlet');
	const hole = page.getByRole('group', { name: 'Hole 1' });
	await hole.getByLabel('Whole ice').fill('a foot');
	await hole.getByLabel('Snow').fill('3');
	await page.getByRole('button', { name: 'Store the reading' }).click();
	await page.getByRole('alert').getByText('Not stored. Please mend:').waitFor();
	expect(await page.getByLabel('Day', { exact: true }).inputValue()).toBe(FROZE_OVER);
	expect(await page.getByLabel('Place', { exact: true }).inputValue()).toBe('By the inlet');
	expect(await hole.getByLabel('Whole ice').inputValue()).toBe('a foot');
	expect(await hole.getByLabel('Snow').inputValue()).toBe('3');
	expect(await app.ask('GET', `/lakes/${id}/readings`)).toEqual([]);
});
