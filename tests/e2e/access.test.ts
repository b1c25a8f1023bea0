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
		for (const { name, httpOnly, sameSite } of cookies.filter((each) =>
			each.name.startsWith('frost')
		))
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
