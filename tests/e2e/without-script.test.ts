import { expect, test } from 'vitest';
import { browserPath, DESK } from '../support/browser.ts';
import {
	csvOf,
	lakeWithWinter,
	LAST_WEATHER,
	lastDay_cm,
	WEATHER_DAYS
} from '../support/past-winter.ts';
import { saidThickness } from '../support/read-page.ts';
import { story } from '../support/story.ts';

const app = story();
const WITHOUT_SCRIPT = { ...DESK, javaScriptEnabled: false };

test.runIf(browserPath)(
	'without script the invented lake says its ice, loads and cautions, and gives its tables',
	async () => {
		const page = await app.open('/lakes/pinder-lake', WITHOUT_SCRIPT);
		const { estimate, lower } = await saidThickness(page);
		expect(estimate).toBeGreaterThan(lower);
		await page.getByRole('img', { name: /^From the top: / }).waitFor();
		const loads = await page.getByRole('list', { name: 'Loads by where they stand' }).innerText();
		expect(loads).toMatch(/drilled/i);
		await page.getByRole('region', { name: 'Before anybody goes' }).waitFor();
		await page.locator('noscript p', { hasText: 'The chart needs JavaScript.' }).first().waitFor();

		await page.getByText('Week by week', { exact: true }).click();
		const weeks = page.getByRole('table', { name: 'Ice thickness week by week' });
		expect(await weeks.getByRole('row').count()).toBeGreaterThan(8);
		expect(await weeks.getByRole('row').last().innerText()).toContain(`${estimate} cm`);
		await page.getByText('Degree-days and snow week by week').click();
		await page.getByRole('table', { name: /^Frost, thaw and snow/ }).waitFor();
		// With script the box of a chart is labelled; without it the sentence must stand.
		await page.getByText(/^From open water on .* to \d+ cm on/).waitFor();
	}
);

test.runIf(browserPath)(
	'without script the page of going on opens each load, and a person on foot sees only what walks',
	async () => {
		const id = await lakeWithWinter(app);
		const page = await app.open(`/lakes/${id}/loads`, WITHOUT_SCRIPT);
		const ticks = page.getByRole('group', { name: 'What goes onto this lake' });
		for (const tick of await ticks.getByRole('checkbox').all()) await tick.uncheck();
		await ticks.getByLabel(/One person/).check();
		await page.getByRole('button', { name: 'Show these' }).click();
		await page.getByText('Stored.', { exact: true }).waitFor();
		await page.goto(`/lakes/${id}/going-on`);
		const loads = page.getByRole('region', { name: 'Load by load' });
		expect(await loads.locator('details').count()).toBe(1);
		await loads.locator('summary').click();
		await loads.getByText('Strict charts', { exact: true }).waitFor();
		expect(await loads.innerText()).toContain('which decides');
	}
);

test.runIf(browserPath)('without script a reading is added by a plain form', async () => {
	const id = await lakeWithWinter(app);
	const { estimate_cm } = await lastDay_cm(app, id);
	const drilled_cm = Math.round(0.8 * estimate_cm);
	const page = await app.open(`/lakes/${id}/readings`, WITHOUT_SCRIPT);
	await page.getByLabel('Day', { exact: true }).fill(LAST_WEATHER);
	await page.getByRole('group', { name: 'Hole 1' }).getByLabel('Whole ice').fill(`${drilled_cm}`);
	await page.getByRole('button', { name: 'Add a hole' }).click();
	const second = page.getByRole('group', { name: 'Hole 2' });
	await second.getByLabel('Whole ice').fill(`${drilled_cm}`);
	await page.getByRole('button', { name: 'Store the reading' }).click();
	await page.getByText(/^Stored\. The estimate/).waitFor();

	await page.goto(`/lakes/${id}`);
	const { estimate } = await saidThickness(page);
	expect(Math.abs(estimate - drilled_cm)).toBeLessThan((estimate_cm - drilled_cm) / 2);
});

test.runIf(browserPath)('without script a CSV file is looked at and taken in', async () => {
	const id = await lakeWithWinter(app, '');
	const file = {
		name: 'invented.csv',
		mimeType: 'text/csv',
		buffer: Buffer.from(csvOf(['air', 'water']))
	};
	const page = await app.open(`/lakes/${id}/weather`, WITHOUT_SCRIPT);
	await page.getByLabel(/Choose a CSV file/).setInputFiles(file);
	await page.getByRole('button', { name: 'Look at the file' }).click();
	await page.getByText('A daily record in').waitFor();
	await page.getByLabel('What precip_mm is').selectOption('ignore');
	await page.getByLabel(/CSV file/).setInputFiles(file);
	await page.getByRole('button', { name: 'Import' }).click();
	await page.getByRole('heading', { name: `${WEATHER_DAYS} days stored` }).waitFor();
	// The correction came along: what was not taken in is not known.
	await page.getByText('This file does not know the snow').waitFor();
	await page.getByRole('link', { name: 'See the lake' }).click();
	await page.getByRole('heading', { level: 1, name: /\d+ cm of ice/ }).waitFor();
});
