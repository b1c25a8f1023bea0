import type { BrowserContext, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { PASSPHRASE } from '../support/access.ts';
import { bringAxe, violations } from '../support/axe.ts';
import { browserPath, DESK, PHONE } from '../support/browser.ts';
import { connect, openAndKeep, waitingOnDevice } from '../support/device.ts';
import { offlineApp } from '../support/offline-app.ts';

/** A name that a browser takes for no machine of its own, and so for an origin that may keep little. */
const ELSEWHERE = 'ice.example';
const app = offlineApp({ FROSTLEDGER_PASSPHRASE: PASSPHRASE, FROSTLEDGER_HOSTS: ELSEWHERE }, [
	`--host-resolver-rules=MAP ${ELSEWHERE} 127.0.0.1`
]);
const LAKE = '/lakes/pinder-lake';
/** Pages send on their own once they have come to rest. */
const LATER = { timeout: 30_000 };
const HOLE = `${LAKE}/at-the-hole`;

async function signIn(page: Page, back: string): Promise<void> {
	await page.goto(`/sign-in?back=${back}`);
	await page.getByLabel('Passphrase').fill(PASSPHRASE);
	await page.getByRole('button', { name: 'Sign in' }).click();
	await page.waitForURL(`**${back}`);
}

async function linkFor(owner: Page, name: string): Promise<string> {
	await owner.getByLabel('Name of the helper').fill(name);
	await owner.getByRole('button', { name: 'Make a helper’s link' }).click();
	return owner.getByLabel(`The link of ${name}`, { exact: true }).inputValue();
}

async function comeIn(page: Page, link: string): Promise<void> {
	await page.goto(new URL(link).pathname);
	await page.getByRole('button', { name: 'Come in' }).click();
	await page.waitForURL('/');
}

/** As where a session runs out: nobody has signed out. */
async function endSession(device: BrowserContext): Promise<void> {
	await device.clearCookies({ name: 'frostledger-session' });
}

async function logHole(page: Page, thickness_cm: string, place: string): Promise<void> {
	await page.getByLabel(/^Whole ice/).fill(thickness_cm);
	await page.locator('[name=otherPlace]').fill(place);
	await page.getByRole('button', { name: 'Store this hole' }).click();
	await page.getByText(`${thickness_cm} cm, ${place}`).first().waitFor();
}

/** Of the readings that the server has, the places that begin with a word, as whoever is signed in sees them. */
function storedPlaces(page: Page, start: string): Promise<string[]> {
	return page.evaluate(async (word) => {
		const response = await fetch('/api/v1/lakes/pinder-lake/readings');
		const readings = (await response.json()) as { place: string | null }[];
		return readings.flatMap(({ place }) => (place?.startsWith(word) ? [place] : []));
	}, start);
}

async function expectNothingOfAxe(page: Page): Promise<void> {
	await bringAxe(page);
	expect(await violations(page)).toEqual([]);
}

test.runIf(browserPath)(
	'what one has typed is sent in nobody else’s name, unless they put theirs to it',
	async () => {
		await app.start();
		const desk = await app.device(DESK);
		const owner = await desk.newPage();
		await signIn(owner, '/people');
		const first = await linkFor(owner, 'First Helper');
		const second = await linkFor(owner, 'Second Helper');

		const device = await app.device(PHONE);
		const start = await device.newPage();
		await comeIn(start, first);
		await start.close();
		const page = await openAndKeep(device, LAKE);
		await app.stop();
		await page.goto(HOLE);
		for (const place of ['Hers one', 'Hers two', 'Hers three']) await logHole(page, '51', place);
		await endSession(device);
		await page.goto('about:blank');
		await app.start();

		await comeIn(page, second);
		await page.goto('/on-this-phone');
		await page.getByText('It waits for First Helper to sign in here.').nth(2).waitFor();
		await page.getByRole('button', { name: 'Send it as Second Helper' }).first().waitFor();
		expect(await page.getByRole('button', { name: 'Send now' }).count()).toBe(0);
		await expectNothingOfAxe(page);
		expect(await storedPlaces(page, 'Hers')).toEqual([]);

		await page.goto(HOLE);
		const one = page.getByRole('listitem').filter({ hasText: 'Hers one' });
		await one.getByRole('button', { name: 'Send it as Second Helper' }).click();
		await expect.poll(() => storedPlaces(page, 'Hers'), LATER).toEqual(['Hers one']);

		await owner.goto('/people');
		await owner.getByRole('button', { name: 'Remove First Helper' }).click();
		await owner.getByText('The helper is out.').waitFor();
		await page.goto('/on-this-phone');
		await page.getByText(/^Not sent yet: 2 readings/).waitFor();
		await page
			.getByText(/First Helper typed it and does not come in any more/)
			.nth(1)
			.waitFor();
		expect(await waitingOnDevice(page)).toHaveLength(2);
		const two = page.getByRole('listitem').filter({ hasText: 'Hers two' });
		await two.getByRole('button', { name: 'Discard' }).click();
		await two.getByRole('button', { name: 'Discard it for good?' }).click();
		await two.waitFor({ state: 'detached' });
		const three = page.getByRole('listitem').filter({ hasText: 'Hers three' });
		await three.getByRole('button', { name: 'Send it as Second Helper' }).click();
		await page.getByText('Everything that was entered on this device is on the server.').waitFor();
		expect((await storedPlaces(page, 'Hers')).toSorted()).toEqual(['Hers one', 'Hers three']);

		await owner.goto(`${LAKE}/history`);
		const logged = owner.getByRole('listitem').filter({ hasText: 'Hers three' });
		await logged.getByText('Second Helper').waitFor();
		await device.close();
		await desk.close();
	}
);

test.runIf(browserPath)('what one has typed is sent once they are back', async () => {
	const device = await app.device(PHONE);
	const page = await device.newPage();
	await signIn(page, HOLE);
	await page.getByLabel(/^Whole ice/).waitFor();
	await device.setOffline(true);
	await logHole(page, '52', 'Owned');
	await endSession(device);
	await connect(device, page);
	await page.getByText('It waits for the owner to sign in here.').waitFor();
	expect(await waitingOnDevice(page)).toHaveLength(1);
	await signIn(page, HOLE);
	await expect.poll(() => storedPlaces(page, 'Owned'), LATER).toEqual(['Owned']);
	await expect.poll(() => waitingOnDevice(page), LATER).toEqual([]);
	await device.close();
});

test.runIf(browserPath)(
	'an address that may keep no pages says so, and what is not sent stays',
	async () => {
		const device = await app.device({
			...PHONE,
			baseURL: app.url('/').replace('localhost', ELSEWHERE)
		});
		const page = await device.newPage();
		await signIn(page, '/on-this-phone');
		await page
			.getByText(/^Pages are kept for the lake only where the address begins with https/)
			.waitFor();
		await expectNothingOfAxe(page);
		await page.goto(HOLE);
		await page.getByLabel(/^Whole ice/).waitFor();
		await device.setOffline(true);
		await logHole(page, '53', 'Elsewhere');
		expect(await storedPlaces(page, 'Elsewhere').catch(() => [])).toEqual([]);
		await connect(device, page);
		await expect.poll(() => storedPlaces(page, 'Elsewhere'), LATER).toEqual(['Elsewhere']);

		// Where the browser refuses to keep anything, the form still has it.
		await page.addInitScript(() => {
			indexedDB.open = () => {
				throw new DOMException('refused', 'SecurityError');
			};
		});
		await page.goto(HOLE);
		await page.getByLabel(/^Whole ice/).fill('54');
		await device.setOffline(true);
		await page.getByRole('button', { name: 'Store this hole' }).click();
		await page.getByText(/^No answer came: it may not be stored\./).waitFor();
		expect(await page.getByLabel(/^Whole ice/).inputValue()).toBe('54');
		await device.close();
	}
);

test.runIf(browserPath)(
	'what is on a device, kept and let go of: nothing that axe finds',
	async () => {
		const device = await app.device(PHONE);
		const start = await device.newPage();
		await signIn(start, '/on-this-phone');
		await start.getByText(/^None yet\./).waitFor();
		await expectNothingOfAxe(start);
		await start.close();
		const page = await openAndKeep(device, LAKE);
		await page.goto('/on-this-phone');
		await page.getByRole('row').filter({ hasText: 'Pinder Lake' }).waitFor();
		await expectNothingOfAxe(page);
		await page.getByRole('button', { name: 'Forget all on this device' }).click();
		await page.getByText('Nothing is kept on this device any more.').waitFor();
		await expectNothingOfAxe(page);
		await device.close();
	}
);
