import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { browserPath, DESK, PHONE } from '../support/browser.ts';
import { story } from '../support/story.ts';

const app = story({ FROSTLEDGER_REFRESH: 'off' });

const FAMILY = 'Atkinson Hyperlegible';

test.runIf(browserPath)(
	'a phone writes its first page without the type, and has it from the next one on',
	async () => {
		const page = await app.open('/', PHONE);
		expect(await family(page)).not.toContain(FAMILY);
		expect(await asked(page)).toBe(0);
		await expect.poll(() => asked(page), { timeout: 15_000 }).toBe(2);
		await expect.poll(() => marked(page)).toBe(true);
		// What is in view is left as it is.
		expect(await family(page)).not.toContain(FAMILY);

		await page.getByRole('link', { name: 'Method' }).first().click();
		await page.waitForURL('**/method');
		await expect.poll(() => family(page)).toContain(FAMILY);

		await page.goto('/method', { waitUntil: 'load' });
		expect(await family(page)).toContain(FAMILY);
		expect(await page.locator('link[as=font][media=all]').count()).toBe(2);
	}
);

test.runIf(browserPath)('at a desk the first page has it', async () => {
	const page = await app.open('/', DESK);
	expect(await family(page)).toContain(FAMILY);
	expect(await asked(page)).toBe(2);
});

function family(page: Page): Promise<string> {
	return page.evaluate(() => getComputedStyle(document.body).fontFamily);
}

/** Files of type that the page has asked for. */
function asked(page: Page): Promise<number> {
	return page.evaluate(
		() => performance.getEntriesByType('resource').filter(({ name }) => /woff2/.test(name)).length
	);
}

function marked(page: Page): Promise<boolean> {
	return page.evaluate(() => localStorage.getItem('frostledger-type') !== null);
}
