import type { Locator } from 'playwright-core';
import { addDays, daysBetween } from '#lib/model/calendar.ts';
import { LAYOUT, SCALE_WIDTH_px, timeSpan } from '#lib/ui/charts/time-axis.ts';
import { day } from '#lib/ui/format/day.ts';
import { expect, test } from 'vitest';
import { browserPath } from '../support/browser.ts';
import {
	csvOf,
	FROZE_OVER,
	lakeWithWinter,
	LAST_WEATHER,
	lastDay_cm,
	WEATHER_DAYS,
	weatherAge_d
} from '../support/past-winter.ts';
import { thicknessFigure, unfold } from '../support/read-page.ts';
import { story } from '../support/story.ts';

const app = story();

test.runIf(browserPath)(
	'a file of temperatures alone leaves the snow unknown, and nothing is expected or reached',
	async () => {
		const id = await lakeWithWinter(app, '');
		const page = await app.open(`/lakes/${id}/weather`);
		await page.getByLabel(/CSV file/).setInputFiles({
			name: 'temperatures.csv',
			mimeType: 'text/csv',
			buffer: Buffer.from(csvOf(['air']))
		});
		await page.getByText('A daily record in').waitFor();
		await page.getByRole('button', { name: 'Import' }).click();
		await page.getByRole('heading', { name: `${WEATHER_DAYS} days stored` }).waitFor();
		await page.getByText('This file does not know the snow').waitFor();
		await page.getByRole('link', { name: 'See the lake' }).click();

		const cautions = page.getByRole('region', { name: 'Before anybody goes' });
		await cautions.getByText(/Snow on the ice is not known: usual snow .* stands in/).waitFor();
		const { estimate_cm, fdd_degCd, loads } = await lastDay_cm(app, id);
		expect(estimate_cm).toBeGreaterThan(5);
		expect(estimate_cm).toBeLessThan(bareIce_cm(fdd_degCd) - 15);
		const standing = await page.getByRole('list', { name: /^Loads by where/ }).innerText();
		expect(standing).not.toMatch(/\b(expected|reached)\b/i);
		expect(loads.filter(({ status }) => /reached|expected/i.test(status))).toEqual([]);
		expect(loads.filter(({ expectedFrom }) => expectedFrom !== null)).toEqual([]);
	}
);

test.runIf(browserPath)(
	'old weather is told by its age, and nothing is drawn past it',
	async () => {
		const id = await lakeWithWinter(app);
		const page = await app.open(`/lakes/${id}`);
		const said = await page.locator('main').innerText();
		expect(said).toContain(`${weatherAge_d()} days ago`);

		const asOf = addDays(LAST_WEATHER, 20);
		await page.getByLabel('As of').fill(asOf);
		await page.getByRole('button', { name: 'Show' }).click();
		await page.getByRole('heading', { level: 1, name: /^Not known for .* weather ends/ }).waitFor();
		await unfold(page);
		// A day's state is that of its start, so the last weather makes that of the day after.
		const last = addDays(LAST_WEATHER, 1);
		const weeks = page.getByRole('table', { name: 'Ice thickness week by week' });
		expect(await weeks.getByRole('row').last().innerText()).toContain(day(last));

		const { from, to } = timeSpan(FROZE_OVER, asOf);
		const canvas = thicknessFigure(page).locator('canvas');
		const endsAt = async () => (await iceEndsAt(canvas)) * daysBetween(from, to);
		await expect.poll(endsAt).toBeGreaterThan(daysBetween(from, LAST_WEATHER));
		expect(await endsAt()).toBeLessThan(daysBetween(from, last) + 0.5);
	}
);

/** How far along the axis of days the ice is painted, 0 to 1. */
async function iceEndsAt(canvas: Locator): Promise<number> {
	const column = await canvas.evaluate((node) => {
		const probe = document.createElement('i');
		probe.style.color = 'var(--clear-wash)';
		node.parentElement?.append(probe);
		const ice = getComputedStyle(probe).color.match(/\d+/g)?.map(Number) ?? [];
		probe.remove();
		const { width, height } = node as HTMLCanvasElement;
		const context = (node as HTMLCanvasElement).getContext('2d');
		const { data } = context?.getImageData(0, 0, width, height) ?? { data: [] };
		let last = 0;
		for (let at = 0; at < data.length; at += 4) {
			const isIce = ice.every((value, channel) => Math.abs((data[at + channel] ?? 0) - value) < 4);
			if (isIce) last = Math.max(last, (at / 4) % width);
		}
		return last / (width / node.clientWidth);
	});
	const width = await canvas.evaluate((node) => node.clientWidth);
	return (column - SCALE_WIDTH_px) / (width - SCALE_WIDTH_px - LAYOUT.padding.right);
}

/** Ashton (1989): bare ice under an air film of 20 W/m²K, k 2.24 W/mK, α² 12.652 cm² a °C·d. */
function bareIce_cm(fdd_degCd: number): number {
	const film_cm = (100 * 2.24) / 20;
	return Math.sqrt(film_cm ** 2 + 12.652 * fdd_degCd) - film_cm;
}
