import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { browserPath, PHONE } from '../support/browser.ts';
import { connect, openAndKeep, sleep, waitingOnDevice } from '../support/device.ts';
import { offlineApp } from '../support/offline-app.ts';
import { otherBuild } from '../support/other-build.ts';

const app = offlineApp();
const LAKE = '/lakes/pinder-lake';

async function expectStored(places: readonly string[]): Promise<void> {
	const stored = async () =>
		(await app.readings('pinder-lake'))
			.map(({ place }) => place)
			.filter((place) => place !== null && places.includes(place))
			.toSorted();
	await expect.poll(stored, { timeout: 30_000 }).toEqual(places.toSorted());
}

/** Types into a form whose page has not woken, and sends it as the browser does. */
async function sendAsleep(page: Page, path: string, thickness_cm: string, place: string) {
	await page.goto(LAKE + path);
	await page
		.getByLabel(/^Whole ice/)
		.first()
		.fill(thickness_cm);
	await page.locator(path === '/at-the-hole' ? '[name=otherPlace]' : '[name=place]').fill(place);
	await page.getByRole('button', { name: /^Store th/ }).click();
}

test.runIf(browserPath)(
	'what is sent without a connection before its page has woken is kept, said to be, and stored once',
	async () => {
		await app.start();
		const device = await app.device(PHONE);
		const page = await openAndKeep(device, LAKE);
		const wake = await sleep(page);
		// With a connection it is stored as without a worker.
		await sendAsleep(page, '/at-the-hole', '52', 'Asleep online');
		await page.waitForURL(/stored=/);
		await expectStored(['Asleep online']);

		await app.stop();
		await sendAsleep(page, '/at-the-hole', '53', 'Asleep at the hole');
		await page.getByText('What you typed is kept on this device, not sent yet.').waitFor();
		await sendAsleep(page, '/readings', '54', 'Asleep on a visit');
		await page.getByText('What you typed is kept on this device, not sent yet.').waitFor();
		// Clear and white that are more than the whole: to be mended by the person, and kept until then.
		await page
			.getByLabel(/^Whole ice/)
			.first()
			.fill('20');
		await page
			.getByLabel(/^Clear ice/)
			.first()
			.fill('30');
		await page
			.getByLabel(/^White ice/)
			.first()
			.fill('30');
		await page.getByRole('button', { name: 'Store the reading' }).click();
		// The page that says so is the same again, with an empty form.
		const first = page.getByLabel(/^Whole ice/).first();
		await expect.poll(() => first.inputValue(), { timeout: 20_000 }).toBe('');

		await wake();
		await page.goto(`${LAKE}/at-the-hole`);
		await page.getByText('53 cm, Asleep at the hole').first().waitFor();
		await page
			.getByText(/^Not taken by the server\./)
			.first()
			.waitFor();
		await app.start();
		await connect(device, page);
		await expectStored(['Asleep at the hole', 'Asleep on a visit']);
		await page.getByText('53 cm, Asleep at the hole').first().waitFor({ state: 'detached' });
		expect(await waitingOnDevice(page)).toHaveLength(1);
		await device.close();
	}
);

test.runIf(browserPath)('a page of another site sends nothing in the worker’s name', async () => {
	await app.start();
	const device = await app.device(PHONE);
	const page = await openAndKeep(device, LAKE);
	const foreign = await device.newPage();
	await foreign.goto('about:blank');
	await foreign.setContent(
		`<form method="post" action="${app.url(`${LAKE}/at-the-hole`)}"><input name="holes.0.total_cm" value="88"><input name="kind" value="measured"><input name="on" value="2026-01-10"><input name="otherPlace" value="Foreign"><button>Go</button></form>`
	);
	await foreign.getByRole('button').click();
	await foreign.waitForURL(/at-the-hole/);
	expect(await waitingOnDevice(page)).toEqual([]);
	const places = (await app.readings('pinder-lake')).map(({ place }) => place);
	expect(places).not.toContain('Foreign');
	await device.close();
});

test.runIf(browserPath)(
	'a visit typed in the page of readings without a connection is kept with all its holes, and mended there',
	async () => {
		await app.start();
		const device = await app.device(PHONE);
		const page = await openAndKeep(device, LAKE);
		await app.stop();
		await page.goto(`${LAKE}/readings`);
		await page.locator('#not-fresh').waitFor();
		await page
			.getByLabel(/^Whole ice/)
			.first()
			.fill('41');
		// Before the page has woken the button asks the server, and without one changes nothing.
		await expect
			.poll(
				async () => {
					await page.getByRole('button', { name: 'Add a hole' }).click();
					return page.getByRole('group', { name: 'Hole 2' }).isVisible();
				},
				{ timeout: 20_000 }
			)
			.toBe(true);
		expect(
			await page
				.getByLabel(/^Whole ice/)
				.first()
				.inputValue()
		).toBe('41');
		await page
			.getByLabel(/^Whole ice/)
			.nth(1)
			.fill('42');
		await page.getByLabel('Place', { exact: true }).fill('Visit');
		await page.getByRole('button', { name: 'Store the reading' }).click();
		const waiting = page.getByRole('region', { name: 'On this device' });
		await waiting.getByText(/Visit/).waitFor();
		await waiting.getByRole('link', { name: /^Mend/ }).click();
		await page.getByRole('button', { name: 'Keep the mended reading' }).waitFor();
		expect(
			await page
				.getByLabel(/^Whole ice/)
				.nth(1)
				.inputValue()
		).toBe('42');
		await page
			.getByLabel(/^Whole ice/)
			.nth(1)
			.fill('43');
		await page.getByRole('button', { name: 'Keep the mended reading' }).click();
		await waiting.getByText(/43/).waitFor();
		await app.start();
		await connect(device, page);
		await expectStored(['Visit']);
		await waiting.waitFor({ state: 'detached' });
		await device.close();
	}
);

test.runIf(browserPath)(
	'a new build takes over and loses neither a kept page nor a waiting reading',
	async () => {
		const other = otherBuild();
		try {
			await app.start();
			const device = await app.device(PHONE);
			const page = await openAndKeep(device, LAKE);
			const keptBy = () =>
				page.evaluate(async () => {
					const cache = await caches.open('frostledger-pages');
					const all: Record<string, string> = {};
					for (const request of await cache.keys()) {
						const kept = await cache.match(request, { ignoreVary: true });
						all[new URL(request.url).pathname] = kept?.headers.get('x-build') ?? '';
						await kept?.body?.cancel();
					}
					return all;
				});
			const before = await keptBy();
			await app.stop();
			await page.goto(`${LAKE}/at-the-hole`);
			await page.getByLabel(/^Whole ice/).fill('55');
			await page.getByLabel(/place$/).fill('Between builds');
			await page.getByRole('button', { name: 'Store this hole' }).click();
			await page.getByText('55 cm, Between builds').first().waitFor();

			await app.start(other.folder);
			await page.evaluate(async () => {
				await (await navigator.serviceWorker.ready).update();
			});
			const [old = ''] = Object.values(before);
			await expect
				.poll(async () => Object.values(await keptBy()).filter((build) => build === old), {
					timeout: 60_000
				})
				.toEqual([]);
			expect(Object.keys(await keptBy())).toEqual(expect.arrayContaining(Object.keys(before)));
			await connect(device, page);
			await expectStored(['Between builds']);
			await expect
				.poll(() => page.evaluate(() => caches.keys()), { timeout: 20_000 })
				.not.toContain(`frostledger-build-${old}`);
			await app.stop();
			await page.goto(`${LAKE}/at-the-hole`);
			await page.locator('#not-fresh').waitFor();
			await page.getByLabel(/^Whole ice/).waitFor();
			await device.close();
		} finally {
			await app.stop();
			other.remove();
		}
	}
);
