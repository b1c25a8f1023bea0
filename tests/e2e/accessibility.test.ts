import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { bringAxe, LOOKS, overhang_px, violations } from '../support/axe.ts';
import { browserPath } from '../support/browser.ts';
import { PICTURED } from '../support/pictured-pages.ts';
import { csvOf, FROZE_OVER, lakeWithWinter } from '../support/past-winter.ts';
import { unfold } from '../support/read-page.ts';
import { story, type Story } from '../support/story.ts';

const app = story();

type Visit = (page: Page, app: Story) => Promise<unknown>;

const LAKE = '/lakes/pinder-lake';

/** What pages look like that only have to be opened. */
const PLAIN: Record<string, Visit> = Object.fromEntries(
	Object.entries(PICTURED).map(([name, path]) => [name, (page) => page.goto(path)])
);

/** What they look like after somebody did something, or before anything is there. */
const STATES: Record<string, Visit> = {
	'a lake with nothing, by its questions': async (page, app) =>
		page.goto(`/lakes/${await lakeWithWinter(app, '')}/going-on`),
	'coming off without weather': async (page, app) =>
		page.goto(`/lakes/${await lakeWithWinter(app, '')}/coming-off`),
	'early ice without weather': async (page, app) =>
		page.goto(`/lakes/${await lakeWithWinter(app, '')}/early-ice`),
	'a lake with dates past its weather, coming off': (page) =>
		page.goto(`${LAKE}/coming-off?asOf=2026-02-28`),
	'the other pages of a lake, opened on a phone': async (page) => {
		await page.setViewportSize({ width: 360, height: 740 });
		await page.goto(LAKE);
		await page.getByRole('button', { name: /^More/ }).click();
		await page.getByRole('link', { name: 'Weak spots' }).waitFor();
	},
	'a load that stands parked': async (page, app) => {
		const parked = { name: 'Hut of the tests', mass_kg: 1400, use: null, parked_h: 40 };
		await app.ask('POST', `${LAKE}/loads`, parked);
		await page.goto(`${LAKE}/going-on`);
		await page.getByText('Hut of the tests').first().waitFor();
	},
	'a removal date and days of lead': async (page) => {
		await page.goto(`${LAKE}/coming-off`);
		await page.getByLabel(/^Everything off by/).fill('2026-03-15');
		await page.getByRole('button', { name: 'Store the days' }).click();
		await page.getByText('Stored.', { exact: true }).waitFor();
	},
	'a removal date that is none': async (page) => {
		await page.goto(`${LAKE}/coming-off`);
		await page.getByText('Days that each load takes').click();
		await page.getByLabel(/^Snowmobile/).fill('soon');
		await page.getByRole('button', { name: 'Store the days' }).click();
		await page.getByRole('alert').waitFor();
	},
	'a weak spot and a route over it': async (page, app) => {
		await page.goto(`${LAKE}/weak-spots/routes/${await routeOf(app)}`);
		await page.getByRole('table', { name: /^Test holes along/ }).waitFor();
	},
	'a weak spot': async (page, app) => {
		await routeOf(app);
		await page.goto(`${LAKE}/weak-spots`);
		await page.getByRole('img', { name: /^Your own points to scale/ }).waitFor();
	},
	'a trip sheet of a route': async (page, app) =>
		page.goto(`${LAKE}/trip?route=${await routeOf(app)}`),
	'being told by calendar': async (page) => {
		await page.goto(`${LAKE}/telling`);
		const calendar = page.getByRole('region', { name: 'Calendar' });
		const make = calendar.getByRole('button', { name: 'Make a secret address' });
		if (await make.count()) await make.click();
		await calendar.getByRole('button', { name: 'Revoke the address' }).waitFor();
	},
	'a file of weather that is none': async (page, app) => {
		await page.goto(`/lakes/${await lakeWithWinter(app, '')}/weather`);
		const file = { name: 'odd.csv', mimeType: 'text/csv', buffer: Buffer.from('no,dates\n1,2\n') };
		await page.getByLabel(/CSV file/).setInputFiles(file);
		await page.getByText('odd.csv').first().waitFor();
	},
	'a file of lakes that is refused': async (page) => {
		await page.goto('/storage/bring');
		const buffer = Buffer.from('no zip');
		const file = { name: 'lakes.zip', mimeType: 'application/zip', buffer };
		await page.getByLabel('The zip file').setInputFiles(file);
		await page.getByRole('button', { name: 'Check the file' }).click();
		await page.getByRole('alert').waitFor();
	},
	'something tried out': async (page) => {
		await page.goto('/lakes/pinder-lake');
		const part = page.getByRole('region', { name: 'What if?' });
		await part.scrollIntoViewIfNeeded();
		await part.getByLabel('Air from today on').press('End');
		await part.getByText('Estimated anew.').waitFor();
	},
	'a lake past its weather': (page) => page.goto('/lakes/pinder-lake?asOf=2026-02-28'),
	'a lake without weather': async (page, app) =>
		page.goto(`/lakes/${await lakeWithWinter(app, '')}`),
	'a load of its own': ownLoad,
	'one reading': async (page) => {
		await page.goto('/lakes/pinder-lake/readings');
		await page
			.getByRole('link', { name: /^Edit the reading/ })
			.first()
			.click();
		await page.getByRole('button', { name: 'Store the change' }).waitFor();
	},
	'a hole just stored': async (page) => {
		await page.goto('/lakes/pinder-lake/at-the-hole');
		await page.getByLabel(/^Whole ice/).fill('50');
		await page.getByRole('button', { name: 'Store this hole' }).click();
		await page.getByRole('status', { name: 'The hole just stored' }).waitFor();
	},
	'its sites': sitesOf,
	'a track with a plan': async (page, app) => {
		await sitesOf(page, app);
		await page.getByRole('link', { name: /^Its work, and a plan : Track/ }).click();
		await page.getByRole('button', { name: 'Work it out' }).click();
		await page.getByRole('heading', { name: 'What a track brings with it' }).waitFor();
	},
	'a plan as a note': async (page, app) => {
		await STATES['a track with a plan']?.(page, app);
		await page.getByRole('link', { name: 'A note to print' }).click();
		await page.getByRole('heading', { name: /^A plan, not done/ }).waitFor();
	},
	'a deleted reading': async (page, app) => {
		const id = await lakeWithWinter(app);
		const reading = { on: FROZE_OVER, kind: 'measured', holes: [{ total_m: 0.3 }] };
		await app.ask('POST', `/lakes/${id}/readings`, reading);
		await page.goto(`/lakes/${id}/readings`);
		await page.getByRole('button', { name: /^Delete the reading/ }).click();
		await page.getByText('The reading is deleted.').waitFor();
	},
	'a refused lake': async (page) => {
		await page.goto('/lakes/new');
		await page.getByRole('button', { name: 'Make the lake' }).click();
		await page.getByRole('alert').waitFor();
	},
	'a file before it is taken in': async (page, app) => {
		await page.goto(`/lakes/${await lakeWithWinter(app, '')}/weather`);
		const buffer = Buffer.from(csvOf(['air', 'water']));
		const file = { name: 'invented.csv', mimeType: 'text/csv', buffer };
		await page.getByLabel(/CSV file/).setInputFiles(file);
		await page.getByText('A daily record in').waitFor();
	},
	'a file taken in': async (page, app) => {
		await STATES['a file before it is taken in']?.(page, app);
		await page.getByRole('button', { name: 'Import' }).click();
		await page.getByRole('heading', { name: / stored$/ }).waitFor();
	},
	'a deleted lake': async (page, app) => {
		await page.goto(`/lakes/${await lakeWithWinter(app, '')}/edit`);
		await page.getByRole('checkbox', { name: /Yes, delete/ }).check();
		await page.getByRole('button', { name: 'Delete the lake' }).click();
		await page.getByRole('button', { name: /^Undo/ }).first().waitFor();
	},
	// The last: the lakes of the others go.
	'home without a lake': async (page, app) => {
		for (const { id } of await app.ask<{ id: string }[]>('GET', '/lakes'))
			await fetch(app.url(`/api/v1/lakes/${id}`), { method: 'DELETE' });
		await page.goto('/');
		await page.getByRole('heading', { name: 'No lake yet.' }).waitFor();
	}
};

for (const [name, visit] of Object.entries({ ...PLAIN, ...STATES })) {
	test.runIf(browserPath)(
		`${name}: nothing that axe finds, on a phone, at a desk, by night`,
		async () => {
			const page = await app.open('about:blank', { reducedMotion: 'reduce' });
			await visit(page, app);
			await unfold(page);
			await bringAxe(page);
			for (const { width, colorScheme } of LOOKS) {
				await page.setViewportSize({ width, height: 800 });
				await page.emulateMedia({ colorScheme });
				expect(await violations(page), `${width} px, ${colorScheme}`).toEqual([]);
				expect(await overhang_px(page), `${width} px wide, scrolled sideways`).toBe(0);
			}
		}
	);
}

/** A route over a weak spot, on the invented lake; made once. */
/** Short enough for a plan of its holes, which the invented lake's own routes are not all. */
let madeRoute: string | null = null;

async function routeOf({ ask }: Story): Promise<string> {
	if (madeRoute !== null) return madeRoute;
	const spot = {
		name: 'Inlet of the tests',
		kind: 'inletOutlet',
		latitude: 47.401,
		longitude: -38.2
	};
	const { id } = await ask<{ id: string }>('POST', `${LAKE}/weak-spots`, spot);
	const points = [{ name: 'Landing', latitude: 47.4, longitude: -38.2 }, { spot: id }];
	const route = await ask<{ id: string }>('POST', `${LAKE}/routes`, { name: 'Out', points });
	madeRoute = route.id;
	return madeRoute;
}

async function sitesOf(page: Page, { ask }: Story) {
	const base = '/lakes/pinder-lake/sites';
	const known = await ask<{ id: string }[]>('GET', base);
	for (const [name, kind, parent] of [
		['Bay of the tests', 'bay', null],
		['Track of the tests', 'track', 'main']
	]) {
		const id = String(name).toLowerCase().replaceAll(' ', '-');
		if (!known.some((site) => site.id === id)) await ask('POST', base, { name, kind, parent });
	}
	await page.goto(base);
}

async function ownLoad(page: Page) {
	await page.goto('/lakes/pinder-lake/loads');
	await page.getByLabel('Name').fill('Sled of the tests');
	await page.getByLabel(/^Mass/).fill('250');
	await page.getByRole('button', { name: 'Add it' }).click();
	await page.getByText('Stored.', { exact: true }).waitFor();
	await page.getByRole('link', { name: /^Edit/ }).first().click();
	await page.getByRole('button', { name: /^Store/ }).waitFor();
}
