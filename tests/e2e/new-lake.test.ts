import { expect, test } from 'vitest';
import { browserPath } from '../support/browser.ts';
import {
	FROZE_OVER,
	INVENTED_DAYS,
	LAST_WEATHER,
	lakeWithWinter,
	lastDay_cm,
	PAST_WINTER,
	WEATHER_DAYS
} from '../support/past-winter.ts';
import { drawing, saidThickness, thicknessFigure } from '../support/read-page.ts';
import { story } from '../support/story.ts';

const app = story();

/** Decimal commas, and a heading for precipitation that nobody can guess. */
const FILE = {
	name: 'invented winter.csv',
	mimeType: 'text/csv',
	buffer: Buffer.from(
		[
			'Invented by a test',
			'date;mean temperature (°C);bucket',
			...INVENTED_DAYS.map(({ on, air_degC, water_mm }) =>
				[on, air_degC.toFixed(1), water_mm.toFixed(1)].join(';').replaceAll('.', ',')
			)
		].join('\r\n')
	)
};

test.runIf(browserPath)(
	'a new lake comes by its freeze-up and a CSV file to its chart',
	async () => {
		const page = await app.open('/');
		await page.getByRole('link', { name: 'Make a lake' }).click();
		await page.getByLabel('Name').fill('Tarn of the Tests');
		await page.getByLabel('Latitude').fill('47.4');
		await page.getByLabel('Longitude').fill('-38.2');
		await page.getByRole('button', { name: 'Make the lake' }).click();
		await page.getByText('Tarn of the Tests is there.').waitFor();

		await page.getByLabel('Winter', { exact: true }).selectOption(PAST_WINTER);
		await page.getByRole('button', { name: 'Show' }).click();
		await page.getByRole('heading', { name: `Winter ${PAST_WINTER}: freeze-up` }).waitFor();
		await page.getByLabel('Froze over').fill(FROZE_OVER);
		await page.getByRole('button', { name: 'Store the days' }).click();
		await page.getByText('Stored.', { exact: true }).waitFor();

		await page.getByRole('link', { name: 'Its weather' }).click();
		await page.getByLabel(/Choose a CSV file/).setInputFiles(FILE);
		await page.getByText('A daily record in').waitFor();
		await page.getByText(/semicolons, decimal comma, dates as year-month-day/).waitFor();
		const role = (column: string) => page.getByLabel(`What ${column} is`);
		expect(await role('date').inputValue()).toBe('date');
		expect(await role('mean temperature (°C)').inputValue()).toBe('air');
		expect(await page.getByLabel('Unit of mean temperature (°C)').inputValue()).toBe('°C');
		expect(await role('bucket').inputValue()).toBe('ignore');

		await role('bucket').selectOption('precipitation');
		await page.getByLabel('Unit of bucket').selectOption('mm');
		await expect.poll(() => page.getByLabel('Unit of bucket').inputValue()).toBe('mm');
		await page.getByRole('button', { name: 'Import' }).click();
		await page.getByRole('heading', { name: `${WEATHER_DAYS} days stored` }).waitFor();
		await page.getByText('No day in between lacks a temperature.').waitFor();

		await page.getByRole('link', { name: 'See the lake' }).click();
		await page.getByRole('heading', { level: 1, name: /\d+ cm of ice/ }).waitFor();
		const id = new URL(page.url()).pathname.split('/').at(-1) ?? '';
		const { on, estimate_cm, lower_cm } = await lastDay_cm(app, id);
		expect(on).toBe(LAST_WEATHER);
		const said = await saidThickness(page);
		expect(Math.abs(said.estimate - estimate_cm)).toBeLessThan(1);
		expect(Math.abs(said.lower - lower_cm)).toBeLessThan(1);
		expect(said.lower).toBeLessThan(said.estimate);
		// What was corrected counts: with precipitation the snow is known.
		expect(await page.locator('main').innerText()).not.toMatch(
			/snow on (it|the ice) is not known/i
		);
		const canvas = thicknessFigure(page).locator('canvas');
		await expect.poll(async () => (await drawing(canvas)).paintedFraction).toBeGreaterThan(0.01);
	}
);

test.runIf(browserPath)('a file chosen before the page is awake is not forgotten', async () => {
	const id = await lakeWithWinter(app, '');
	const page = await app.open('/method');
	let wake = () => {};
	const awake = new Promise<void>((done) => (wake = done));
	await page.route('**/*.js', async (route) => {
		await awake;
		await route.continue();
	});
	await page.goto(`/lakes/${id}/weather`, { waitUntil: 'commit' });
	await page.getByLabel(/CSV file/).setInputFiles(FILE);
	wake();
	await page.getByText('A daily record in').waitFor();
});
