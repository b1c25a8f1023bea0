import { expect, test } from 'vitest';
import { bringAxe, LOOKS, overhang_px, violations } from '../support/axe.ts';
import { browserPath, DESK, PHONE } from '../support/browser.ts';
import {
	csvOf,
	FROZE_OVER,
	lakeWithWinter,
	LAST_WEATHER,
	PAST_WINTER
} from '../support/past-winter.ts';
import { readPdf } from '../support/pdf.ts';
import { story, type Story } from '../support/story.ts';

const app = story();
const LAKE = '/lakes/pinder-lake';

/** As long as names may be, with marks that would be markup. */
const long = (name: string, length = 120) =>
	`${name} <b>& named</b> with all that came to mind at the kitchen table, and once more, `
		.repeat(4)
		.slice(0, length);

async function addPlaces(
	{ ask }: Story,
	lake: string,
	count: number,
	name: (of: string) => string
) {
	const kinds = ['inletOutlet', 'spring', 'pressureRidge', 'landing', 'bogOrWeeds', 'crack'];
	const ids: string[] = [];
	for (let index = 0; index < count; index++) {
		const { id } = await ask<{ id: string }>('POST', `/lakes/${lake}/weak-spots`, {
			name: name(`Spot ${index + 1}`),
			kind: kinds[index % kinds.length],
			latitude: 47.4 + 0.0007 * (index % 7),
			longitude: -38.2 + 0.0009 * (index % 11)
		});
		ids.push(id);
	}
	const points = ids.slice(0, 8).map((spot) => ({ spot }));
	const route = await ask<{ id: string }>('POST', `/lakes/${lake}/routes`, {
		name: name('Way'),
		points
	});
	return { ids, route: route.id };
}

test.runIf(browserPath)(
	'on a phone a weak spot comes onto the list, and a route over it knows nothing',
	async () => {
		const id = await lakeWithWinter(app);
		const page = await app.open(`/lakes/${id}/weak-spots`, PHONE);
		await page.getByRole('heading', { level: 1, name: /^No weak spots/ }).waitFor();
		await page.getByLabel('Name', { exact: true }).fill('Mill <i>inlet</i>');
		await page.getByLabel('What makes it weak').selectOption('Inlet or outlet');
		await page.getByLabel('Latitude').fill('47.401, -38.199');
		await page.getByRole('button', { name: 'Put it on the list' }).click();
		await page.getByRole('heading', { level: 1, name: /^1 weak spot, and of none/ }).waitFor();
		await page.getByRole('heading', { level: 3, name: /Mill <i>inlet<\/i>/ }).waitFor();
		await page.getByRole('img', { name: /^Your own points to scale/ }).waitFor();

		await page.getByRole('link', { name: 'Make a route' }).click();
		await page.getByLabel('Name of the route').fill('Out');
		const first = page.getByRole('group', { name: 'Point 1' });
		await first.getByLabel('What it is').selectOption({ label: 'a plain point, named here' });
		await first.getByLabel('Name of a plain point').fill('Landing');
		const second = page.getByRole('group', { name: 'Point 2' });
		await second.getByLabel('What it is').selectOption({ index: 2 });
		await second.getByLabel(/^Way from/).fill('120');
		await page.getByRole('button', { name: 'Store the route' }).click();
		await page.getByRole('heading', { level: 1, name: /^Not known to carry anything/ }).waitFor();
		const holes = page.getByRole('table', { name: 'Test holes along Out' });
		// 120 m: every 10 m for 50 m, then 15 m at most near the inlet, with a hole where that begins.
		expect(await holes.getByRole('row').count()).toBe(1 + 11);
	}
);

test.runIf(browserPath)('without script a route is read, and its holes for a vehicle', async () => {
	const id = await lakeWithWinter(app);
	const { ids } = await addPlaces(app, id, 2, (name) => name);
	expect(ids).toHaveLength(2);
	const page = await app.open(`/lakes/${id}/weak-spots`, { ...DESK, javaScriptEnabled: false });
	await page.getByText('Nobody has drilled here this winter.').first().waitFor();
	await page.getByRole('link', { name: 'Way' }).click();
	await page.getByRole('heading', { level: 1, name: /Spot 1 and Spot 2/ }).waitFor();
	await page.getByRole('link', { name: 'With a vehicle' }).click();
	await page.getByText(/holes on .* the first at the start/).waitFor();
});

test.runIf(browserPath)(
	'thirty weak spots with long names: nothing that axe finds, nothing sideways',
	async () => {
		const { id } = await app.ask<{ id: string }>('POST', '/lakes', {
			name: long('Lake'),
			latitude: 47.4,
			longitude: -38.2,
			water: 'reservoir'
		});
		const { ids, route } = await addPlaces(app, id, 30, long);
		const pages = [
			`/lakes/${id}/weak-spots`,
			`/lakes/${id}/weak-spots/${ids[0]}`,
			`/lakes/${id}/weak-spots/routes/${route}`,
			`/lakes/${id}/weak-spots/routes/new`,
			`/lakes/${id}/trip?route=${route}`
		];
		for (const path of pages) {
			const page = await app.open(path, { reducedMotion: 'reduce' });
			for (const each of await page.locator('details').all())
				await each.evaluate((node) => node.setAttribute('open', ''));
			await bringAxe(page);
			for (const { width, colorScheme } of LOOKS) {
				await page.setViewportSize({ width, height: 800 });
				await page.emulateMedia({ colorScheme });
				expect(await violations(page), `${path}, ${width} px, ${colorScheme}`).toEqual([]);
				expect(await overhang_px(page), `${path}, ${width} px, scrolled sideways`).toBe(0);
			}
			expect(await page.locator('b', { hasText: /^& named$/ }).count()).toBe(0);
		}
	}
);

const PEOPLE = {
	'Who goes': long('Two of us', 300),
	'Back by': long('Saturday at five', 200),
	'Who is told': long('A friend on land', 300),
	'Emergency number': '000 from any phone'
};

test.runIf(browserPath)(
	'the trip sheet is one page of A4 and of Letter, and says it all',
	async () => {
		const { route } = await addPlaces(app, 'pinder-lake', 4, (name) => `Trip ${name}`);
		const page = await app.open(`${LAKE}/trip?route=${route}`);
		for (const [label, text] of Object.entries(PEOPLE))
			await page.getByRole('textbox', { name: label }).fill(text);
		await page.getByRole('button', { name: 'Put it on the sheet' }).click();
		await page.getByText('It is on the sheet below.').waitFor();
		expect(page.url()).not.toContain('friend');
		for (const [format, width, height] of [
			['A4', 595, 842],
			['Letter', 612, 792]
		] as const) {
			const pdf = await readPdf(await page.pdf({ format }));
			expect(pdf.pages, format).toBe(1);
			// Chromium rounds paper up to whole points.
			expect(Math.abs(pdf.size_pt[0] - width) + Math.abs(pdf.size_pt[1] - height)).toBeLessThan(3);
			// Not shrunk to fit: the smallest letters are those that were asked for.
			expect(pdf.smallest_pt).toBeGreaterThan(7);
			for (const said of [
				/About \d+ cm of ice/,
				/Estimate as of 12 Feb 2026/,
				/weather /,
				/last reading /,
				/000 from any phone/,
				/A friend on land/,
				/Not known/,
				/Ask an ice engineer/,
				/Test holes: \d+ holes on/,
				/Inlet or outlet, not known what it carries/,
				/Ice picks round the neck/,
				/Satellite messenger/,
				/Turn to where you came from/,
				/A forecast, not a permission/
			])
				expect(pdf.text, format).toMatch(said);
			expect(pdf.text).not.toMatch(/Put it on the sheet|Back to|cm °C/);
		}
	}
);

test.runIf(browserPath)(
	'with everything as long as it may be the sheet is still one page',
	async () => {
		const { ask } = app;
		const { id } = await ask<{ id: string }>('POST', '/lakes', {
			name: long('Lake'),
			latitude: 47.4,
			longitude: -38.2,
			water: 'reservoir',
			timeZone: 'UTC'
		});
		await ask('PUT', `/lakes/${id}/winters/${PAST_WINTER}`, { freezeUpOn: FROZE_OVER });
		await ask('POST', `/lakes/${id}/weather`, csvOf(['air', 'water']));
		const broke = Array.from({ length: 8 }, (_, index) => ({
			on: LAST_WEATHER,
			place: long(`Place ${index}`, 200),
			kind: 'wentThrough',
			holes: []
		}));
		await ask('POST', `/lakes/${id}/readings`, broke);
		const { route } = await addPlaces(app, id, 30, long);
		const page = await app.open(`/lakes/${id}/trip?route=${route}&for=vehicle`);
		for (const [label, text] of Object.entries(PEOPLE))
			await page.getByRole('textbox', { name: label }).fill(text);
		await page.getByRole('button', { name: 'Put it on the sheet' }).click();
		await page.getByText('It is on the sheet below.').waitFor();
		for (const format of ['A4', 'Letter'] as const) {
			const pdf = await readPdf(await page.pdf({ format }));
			expect(pdf.pages, format).toBe(1);
			expect(pdf.smallest_pt, format).toBeGreaterThan(7);
			expect(pdf.text).toContain('Do not walk up to the hole.');
		}
	}
);
