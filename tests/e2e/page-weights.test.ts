import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { browserPath, PHONE } from '../support/browser.ts';
import { sum, weighScripts } from '../support/page-weight.ts';
import { PICTURED } from '../support/pictured-pages.ts';
import { story } from '../support/story.ts';

const app = story({ FROSTLEDGER_REFRESH: 'off' });

const ADDRESSES = [
	...new Map(Object.values(PICTURED).map((path) => [pathOf(path), path])).values()
];

/** Compressed. The lake's own page is held tighter, by `weight.test.ts`. */
const MOST_SCRIPT_bytes = 200_000;
const MOST_PAGE_bytes = 40_000;
/** Each file waits for the line once, and six are fetched at a time. */
const MOST_SCRIPTS = 16;

function pathOf(address: string): string {
	return address.split('?')[0] ?? address;
}

test.runIf(browserPath)(
	'no page takes 200 kB of compressed script, scrolled to its end',
	async () => {
		const weights: Record<string, number> = {};
		for (const address of ADDRESSES) {
			const page = await app.open('about:blank', PHONE);
			const weigh = weighScripts(page);
			await page.goto(address, { waitUntil: 'networkidle' });
			await page.evaluate(() => window.scrollTo(0, document.body.scrollHeight));
			await page.waitForLoadState('networkidle');
			weights[address] = sum(await weigh());
			await page.context().close();
		}
		for (const [address, weight] of Object.entries(weights)) {
			expect(weight, address).toBeGreaterThan(20_000);
			expect(weight, address).toBeLessThan(MOST_SCRIPT_bytes);
		}
	}
);

test.runIf(browserPath)(
	'no page holds its first words up: its styles come within it, and it is small',
	async () => {
		const page = await app.open('about:blank', PHONE);
		for (const address of ADDRESSES) {
			const response = await page.goto(address, { waitUntil: 'load' });
			const { styles, scripts } = await holdUps(page);
			expect(styles, address).toEqual([]);
			expect(scripts, address).toBeLessThanOrEqual(MOST_SCRIPTS);
			const text = await response?.text();
			expect(gzipSync(text ?? '').length, address).toBeLessThan(MOST_PAGE_bytes);
		}
	}
);

/** What the browser waited for before it painted, and how many scripts it was told to fetch. */
function holdUps(page: Page) {
	return page.evaluate(() => {
		const fetched = performance.getEntriesByType('resource') as (PerformanceResourceTiming & {
			renderBlockingStatus: string;
		})[];
		return {
			styles: fetched
				.filter(({ renderBlockingStatus }) => renderBlockingStatus === 'blocking')
				.map(({ name }) => name),
			scripts: fetched.filter(({ name }) => name.endsWith('.js')).length
		};
	});
}
