import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { bringAxe, LOOKS, overhang_px, violations } from '../support/axe.ts';
import { PASSPHRASE } from '../support/access.ts';
import { browserPath, DESK } from '../support/browser.ts';
import { story } from '../support/story.ts';

const app = story({ FROSTLEDGER_PASSPHRASE: PASSPHRASE, FROSTLEDGER_HOSTS: 'ice.example' });
const WITHOUT_SCRIPT = { ...DESK, javaScriptEnabled: false };

async function signIn(page: Page): Promise<void> {
	await page.getByLabel('Passphrase').fill(PASSPHRASE);
	await page.getByRole('button', { name: 'Sign in' }).click();
}

async function expectClean(page: Page): Promise<void> {
	await bringAxe(page);
	for (const { width, colorScheme } of LOOKS) {
		await page.setViewportSize({ width, height: 800 });
		await page.emulateMedia({ colorScheme });
		expect(await violations(page), `${width} px, ${colorScheme}`).toEqual([]);
		expect(await overhang_px(page), `${width} px wide, scrolled sideways`).toBe(0);
	}
}

test.runIf(browserPath)(
	'the owner signs in where the page was asked for, and out on all devices',
	async () => {
		const page = await app.open('/lakes/pinder-lake?asOf=2026-01-10', WITHOUT_SCRIPT);
		expect(new URL(page.url()).pathname).toBe('/sign-in');
		await page.getByLabel('Passphrase').fill('not this one at all');
		await page.getByRole('button', { name: 'Sign in' }).click();
		await page.getByText('That is not the passphrase.').waitFor();
		await signIn(page);
		expect(page.url()).toBe(app.url('/lakes/pinder-lake?asOf=2026-01-10'));
		const cookies = await page.context().cookies();
		// Who it is, without a secret, is for the pages to read.
		const secret = cookies.filter(
			({ name }) => name.startsWith('frost') && name !== 'frostledger-person'
		);
		expect(secret.length).toBeGreaterThan(0);
		for (const { name, httpOnly, sameSite } of secret)
			expect({ name, httpOnly, sameSite }).toEqual({ name, httpOnly: true, sameSite: 'Lax' });

		const phone = await app.open('/account', WITHOUT_SCRIPT);
		await signIn(phone);
		await phone.getByRole('heading', { name: 'You are signed in as the owner.' }).waitFor();
		await page.goto('/account');
		await page.getByRole('button', { name: 'Sign out on all your devices' }).click();
		for (const device of [page, phone]) {
			await device.goto('/lakes/pinder-lake');
			expect(new URL(device.url()).pathname).toBe('/sign-in');
		}
	}
);

test.runIf(browserPath)(
	'with script a session that is over leads to the sign-in and back',
	async () => {
		const page = await app.open('/sign-in?back=/lakes/pinder-lake/loads');
		await signIn(page);
		await page.getByLabel('Name').fill('Sled of the tests');
		const session = (await page.context().cookies()).filter(
			({ name }) => name !== 'frostledger-session'
		);
		await page.context().clearCookies();
		await page.context().addCookies(session);
		await page.getByLabel(/^Mass/).fill('250');
		await page.getByRole('button', { name: 'Add it' }).click();
		await page
			.getByText(/^Not stored; what you typed still stands here\. Nobody is signed in/)
			.waitFor();
		expect(await page.getByLabel('Name').inputValue()).toBe('Sled of the tests');
		await page.getByRole('link', { name: 'Method' }).click();
		await page.getByRole('heading', { level: 1 }).waitFor();
		await page.getByRole('link', { name: 'Lakes', exact: true }).click();
		await page.getByLabel('Passphrase').waitFor();
	}
);

test.runIf(browserPath)('signing in and the account: nothing that axe finds', async () => {
	const page = await app.open('/account', { ...DESK, reducedMotion: 'reduce' });
	await expectClean(page);
	await page.getByLabel('Passphrase').fill('not this one at all');
	await page.getByRole('button', { name: 'Sign in' }).click();
	await page.getByRole('alert').waitFor();
	await expectClean(page);
	await signIn(page);
	await page.getByRole('heading', { name: /^You are signed in/ }).waitFor();
	await expectClean(page);
});

/** The owner, signed in, on the page where links are made. */
async function owner(): Promise<Page> {
	const page = await app.open('/sign-in?back=/people', WITHOUT_SCRIPT);
	await signIn(page);
	await page.getByRole('heading', { name: 'Who comes in' }).waitFor();
	return page;
}

async function madeLink(page: Page, name: string, button: string): Promise<string> {
	await page.getByRole('button', { name: button }).click();
	return page.getByLabel(`The link of ${name}`, { exact: true }).inputValue();
}

test.runIf(browserPath)(
	'a helper logs a reading, which stands in the history under their name, and is brought back from there',
	async () => {
		const page = await owner();
		await page.getByLabel('Name of the helper').fill('Invented Helper');
		const link = await madeLink(page, 'Invented Helper', 'Make a helper’s link');
		const phone = await app.open(new URL(link).pathname, WITHOUT_SCRIPT);
		await phone.getByRole('heading', { name: 'Come in as Invented Helper' }).waitFor();
		await phone.getByRole('button', { name: 'Come in' }).click();
		await phone.goto('/lakes/pinder-lake/readings');
		expect(await phone.getByRole('link', { name: 'Being told' }).count()).toBe(0);
		await phone
			.getByLabel(/^Whole ice/)
			.first()
			.fill('47');
		await phone.getByRole('button', { name: 'Store the reading' }).click();
		const stored = phone.getByText(/^Stored\. /);
		const anyway = phone.getByRole('checkbox').first();
		await stored.or(anyway).first().waitFor();
		await stored.waitFor();
		await phone
			.getByRole('button', { name: /^Delete the reading/ })
			.first()
			.click();
		await phone.getByText('The reading is deleted.').waitFor();

		await page.goto('/lakes/pinder-lake/history');
		const [deleted, made] = [page.getByRole('listitem').nth(0), page.getByRole('listitem').nth(1)];
		await made.getByText(/^Logged the reading of .*: 1 hole \(whole ice 47 cm\)\.$/).waitFor();
		await made.getByText('Invented Helper').waitFor();
		await deleted.getByText(/^Deleted the reading/).waitFor();
		await deleted.getByRole('button', { name: /^Undo/ }).click();
		await page.getByText('It is back.').waitFor();
		await page
			.getByRole('listitem')
			.first()
			.getByText(/^Brought back the reading/)
			.waitFor();
		await page.getByRole('listitem').first().getByText('the owner').waitFor();

		expect((await phone.goto('/people'))?.status()).toBe(403);
		await page.goto('/people');
		await page.getByRole('button', { name: 'Remove Invented Helper' }).click();
		await page.getByText('The helper is out.').waitFor();
		await phone.goto('/lakes/pinder-lake/readings');
		expect(new URL(phone.url()).pathname).toBe('/sign-in');
	}
);

test.runIf(browserPath)(
	'a guest looks at one lake and changes nothing, until the link is revoked',
	async () => {
		const page = await owner();
		await page.getByLabel('Whom the link is for').fill('Invented guest');
		const link = await madeLink(page, 'Invented guest', 'Make a guest’s link');
		const guest = await app.open(new URL(link).pathname, WITHOUT_SCRIPT);
		expect(new URL(guest.url()).pathname).toBe('/lakes/pinder-lake');
		await guest.getByRole('heading', { level: 1 }).waitFor();
		for (const path of ['readings', 'weak-spots', 'coming-off']) {
			await guest.goto(`/lakes/pinder-lake/${path}`);
			await guest.getByRole('heading', { level: 1 }).waitFor();
			expect(await guest.locator('main form[method=POST i]').count(), path).toBe(0);
		}
		for (const path of ['/lakes/pinder-lake/history', '/lakes/pinder-lake/edit', '/storage'])
			expect((await guest.goto(path))?.status(), path).toBe(403);
		await page.goto('/people');
		await page.getByRole('button', { name: 'Revoke the link of Invented guest' }).click();
		await page.getByText('The link leads nowhere any more.').waitFor();
		await guest.goto('/lakes/pinder-lake');
		expect(new URL(guest.url()).pathname).toBe('/sign-in');
		expect((await guest.goto(link))?.status()).toBe(404);
	}
);

test.runIf(browserPath)(
	'people, a link, tokens and the history: nothing that axe finds',
	async () => {
		const page = await owner();
		const [name, once] = [
			page.getByLabel('Name of the helper'),
			page.getByLabel('The link works once')
		];
		await name.fill('Second Helper');
		await once.check();
		const link = await madeLink(page, 'Second Helper', 'Make a helper’s link');
		await page.close();
		const scripted = await app.open('/sign-in?back=/people', { ...DESK, reducedMotion: 'reduce' });
		await signIn(scripted);
		await scripted.getByRole('button', { name: 'Make a helper’s link' }).click();
		await scripted.getByRole('alert').waitFor();
		await expectClean(scripted);
		for (const path of [new URL(link).pathname, '/account', '/lakes/pinder-lake/history']) {
			await scripted.goto(path);
			await scripted.getByRole('heading', { level: 1 }).waitFor();
			await expectClean(scripted);
		}
		await scripted.goto('/account');
		await scripted.getByLabel('What it is for').fill('a script');
		await scripted.getByRole('button', { name: 'Make a token' }).click();
		const token = await scripted.getByLabel('The token').inputValue();
		const asked = await fetch(app.url('/api/v1/lakes'), {
			headers: { authorization: `Bearer ${token}` }
		});
		expect(asked.status).toBe(200);
		expect((await fetch(app.url('/api/v1/lakes'))).status).toBe(401);
	}
);
