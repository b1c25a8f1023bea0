import ICAL from 'ical.js';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { bringAxe, LOOKS, overhang_px, violations } from '../support/axe.ts';
import { browserPath, DESK } from '../support/browser.ts';
import { unfold } from '../support/read-page.ts';
import { story } from '../support/story.ts';

const app = story();
const PAGE = '/lakes/pinder-lake/telling';

async function expectClean(page: Page): Promise<void> {
	await unfold(page);
	await bringAxe(page);
	for (const { width, colorScheme } of LOOKS) {
		await page.setViewportSize({ width, height: 800 });
		await page.emulateMedia({ colorScheme });
		expect(await violations(page), `${width} px, ${colorScheme}`).toEqual([]);
		expect(await overhang_px(page), `${width} px wide, scrolled sideways`).toBe(0);
	}
}

test.runIf(browserPath)('switched on, asked for, and revoked, all without script', async () => {
	const page = await app.open(PAGE, { ...DESK, javaScriptEnabled: false });
	await page.getByText('Nothing is told: all three ways are off.').waitFor();
	const calendar = page.getByRole('region', { name: 'Calendar' });
	await calendar.getByRole('button', { name: 'Make a secret address' }).click();
	const address = await calendar.getByLabel('The secret address of the calendar').inputValue();
	const sent = await fetch(address);
	expect(sent.headers.get('content-type')).toBe('text/calendar; charset=utf-8');
	const events = new ICAL.Component(
		ICAL.parse(await sent.text()) as unknown[]
	).getAllSubcomponents();
	expect(events.length).toBeGreaterThan(2);
	// The compressed answer is known again by its tag.
	const etag = sent.headers.get('etag') ?? '';
	const again = await fetch(address, { headers: { 'if-none-match': etag } });
	expect([again.status, await again.text()]).toEqual([304, '']);
	await page.goto(PAGE);
	expect(await page.content()).not.toContain(address.split('/')[4]);
	await page.getByText('What changes is told by calendar.').waitFor();
	await calendar.getByRole('button', { name: 'Revoke the address' }).click();
	await page.getByText('The calendar is off: its address leads nowhere any more.').waitFor();
	expect((await fetch(address)).status).toBe(404);
});

test.runIf(browserPath)(
	'nothing that axe finds, with all ways off, on, refused and failing',
	async () => {
		const page = await app.open(PAGE, { ...DESK, reducedMotion: 'reduce' });
		await expectClean(page);
		// Unfolded already, unless that was before the page woke.
		const address = page.getByLabel('Address', { exact: true });
		if (!(await address.isVisible())) await page.getByText('Set it up', { exact: true }).click();
		await address.fill('http://192.168.1.1/ice');
		await page.getByRole('button', { name: 'Set up the webhook' }).click();
		await page.getByRole('alert').waitFor();
		expect(await page.getByLabel('Address', { exact: true }).inputValue()).toBe(
			'http://192.168.1.1/ice'
		);
		await expectClean(page);
		await page.getByLabel('Address', { exact: true }).fill('https://hooks.invalid/ice');
		await page.getByRole('button', { name: 'Set up the webhook' }).click();
		await page.getByLabel('The key that messages are signed with').waitFor();
		const changes = page.getByRole('region', { name: 'Feed of changes' });
		await changes.getByRole('button', { name: 'Make a secret address' }).click();
		await changes.getByLabel('The secret address of the feed').waitFor();
		await expectClean(page);
		await page.getByRole('button', { name: 'Send a test message' }).click();
		await page.getByText('The test message was not taken.').waitFor();
		await expectClean(page);
	}
);
