import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { browserPath, DESK, PHONE } from '../support/browser.ts';
import { story } from '../support/story.ts';

const app = story();
const PATH = '/lakes/pinder-lake/at-the-hole';
/** A finger needs this much, in pixels. */
const TARGET_px = 44;

/** Counts what a person touches; each has to be big enough for a cold thumb. */
function thumb(page: Page) {
	let taps = 0;
	const tap = async (at: Locator) => {
		await at.scrollIntoViewIfNeeded();
		const box = await at.boundingBox();
		expect(box?.height ?? 0).toBeGreaterThanOrEqual(TARGET_px);
		await at.tap();
		taps++;
	};
	return {
		tap,
		type: async (label: RegExp, digits: string) => {
			await tap(page.getByLabel(label));
			await page.keyboard.type(digits);
		},
		taps: () => taps
	};
}

const stored = (page: Page) => page.getByRole('status', { name: 'The hole just stored' });

test.runIf(browserPath)(
	'a usual reading takes four touches and its digits, the next hole three',
	async () => {
		const page = await app.open(PATH, PHONE);
		const first = thumb(page);
		await first.type(/^Whole ice/, '52');
		await first.type(/^Snow/, '6');
		await first.tap(page.locator('label', { hasText: 'Main basin' }));
		await first.tap(page.getByRole('button', { name: 'Store this hole' }));
		await stored(page)
			.getByRole('heading', { name: /^Stored: 52 cm, snow 6 cm, Main basin/ })
			.waitFor();
		expect(first.taps()).toBeLessThanOrEqual(4);

		const told = await stored(page).innerText();
		expect(told).toMatch(/The estimate (stays at|goes from) \d+ cm/);
		expect(told).toMatch(/the lower bound (stays at|goes from) \d+ cm/);
		expect(told).toMatch(/One person with gear:/);

		const next = thumb(page);
		await next.type(/^Whole ice/, '51');
		await next.type(/^Snow/, '7');
		await next.tap(page.getByRole('button', { name: 'Store this hole' }));
		await page.getByRole('heading', { name: 'Today: 2 holes' }).waitFor();
		expect(next.taps()).toBe(3);
		const ofToday = await app.ask<{ on: string; place: string; holes: object[] }[]>(
			'GET',
			'/lakes/pinder-lake/readings'
		);
		expect(ofToday.at(-1)).toMatchObject({ place: 'Main basin' });
		expect(ofToday.at(-1)?.holes).toHaveLength(2);
	}
);

test.runIf(browserPath)(
	'without an answer nothing typed is lost, and it is stored once',
	async () => {
		const page = await app.open(PATH, PHONE);
		await page.getByLabel(/^Whole ice/).fill('47');
		await page.getByLabel(/place$/).fill('Off the far point');
		// The framework fetches its page of errors once the page already works; a line cut within that
		// moment is a fault of the line, not of the page.
		await page.waitForLoadState('networkidle');
		await page.context().setOffline(true);
		const send = page.getByRole('button', { name: 'Store this hole' });
		await send.tap();
		const waits = page.getByRole('region', { name: 'On this phone' });
		await waits.getByRole('listitem').filter({ hasText: '47 cm, Off the far point' }).waitFor();
		await page.context().setOffline(false);
		await page.evaluate(() => dispatchEvent(new Event('online')));
		await waits.waitFor({ state: 'detached' });
		const stored = await app.ask<{ place: string | null }[]>('GET', '/lakes/pinder-lake/readings');
		expect(stored.filter(({ place }) => place === 'Off the far point')).toHaveLength(1);
	}
);

test.runIf(browserPath)('by keyboard alone, and refused with all that was typed', async () => {
	const page = await app.open(PATH, DESK);
	const reach = async (label: RegExp) => {
		const id = await page.getByLabel(label).getAttribute('id');
		for (let presses = 0; presses < 60; presses++) {
			await page.keyboard.press('Tab');
			if ((await page.evaluate(() => document.activeElement?.id)) === id) return;
		}
		throw new Error(`Tab does not come to ${label}`);
	};
	await reach(/^Whole ice/);
	await page.keyboard.type('4x');
	await reach(/^Slush/);
	await page.keyboard.type('2');
	await page.keyboard.press('Enter');
	await page.getByRole('alert').filter({ hasText: 'Not stored. Please mend' }).waitFor();
	expect(await page.getByLabel(/^Slush/).inputValue()).toBe('2');
	await reach(/^Whole ice/);
	await page.keyboard.press('Control+A');
	await page.keyboard.type('49');
	await page.keyboard.press('Enter');
	await stored(page)
		.getByRole('heading', { name: /^Stored: 49 cm, slush 2 cm/ })
		.waitFor();
});

test.runIf(browserPath)('without script', async () => {
	const page = await app.open(PATH, { ...PHONE, javaScriptEnabled: false });
	await page.getByLabel(/^Whole ice/).fill('50');
	await page.getByLabel(/place$/).fill('By the old mole');
	await page.getByText('Day, who, remark').tap();
	await page.getByRole('button', { name: 'Store this hole' }).tap();
	await stored(page)
		.getByRole('heading', { name: /^Stored: 50 cm, By the old mole/ })
		.waitFor();
	expect(await page.getByText('Store where this is, from the phone').count()).toBe(0);
});

test.runIf(browserPath)('the phone’s position is stored when it is allowed', async () => {
	const page = await app.open('about:blank', {
		...PHONE,
		geolocation: { latitude: 47.41234, longitude: -38.20001 },
		permissions: ['geolocation']
	});
	await page.goto(PATH);
	await page.getByLabel(/^Whole ice/).fill('48');
	await page.getByLabel(/place$/).fill('Where the phone is');
	await page.getByLabel('Store where this is, from the phone').check();
	await page.getByText(/^Known to \d+ m/).waitFor();
	await page.getByRole('button', { name: 'Store this hole' }).tap();
	await stored(page).waitFor();
	await page.getByRole('link', { name: 'Mend the reading Where the phone is' }).tap();
	await page.getByText('Taken at 47.41234, -38.20001').waitFor();
	const listed = await app.ask<object[]>('GET', '/lakes/pinder-lake/readings');
	expect(JSON.stringify(listed)).not.toContain('38.2');
});
