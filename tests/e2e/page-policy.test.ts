import { createHash } from 'node:crypto';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { browserPath } from '../support/browser.ts';
import { PICTURED } from '../support/pictured-pages.ts';
import { story } from '../support/story.ts';

const app = story({ FROSTLEDGER_REFRESH: 'off' });
const LAKE = '/lakes/pinder-lake';

/** What the browser has refused to load or run on a page, as `directive: what`. */
function refusedOn(page: Page): Promise<string[]> {
	return page.evaluate(() => (window as unknown as { refused: string[] }).refused);
}

async function watched(): Promise<Page> {
	const page = await app.open('about:blank');
	await page.addInitScript(() => {
		const refused: string[] = [];
		Object.assign(window, { refused });
		document.addEventListener('securitypolicyviolation', (event) => {
			const { effectiveDirective, blockedURI, sample, lineNumber } = event;
			refused.push(`${effectiveDirective}: ${blockedURI} ${sample} line ${lineNumber}`);
		});
	});
	return page;
}

test.runIf(browserPath)('no page asks for what its policy forbids', async () => {
	const page = await watched();
	for (const [name, address] of Object.entries(PICTURED)) {
		const response = await page.goto(address, { waitUntil: 'networkidle' });
		const policy = response?.headers()['content-security-policy'] ?? '';
		expect(policy, name).toContain("default-src 'self'");
		expect(policy, name).not.toMatch(/unsafe-inline|unsafe-eval|nonce-|https?:|\*/);
		expect(await refusedOn(page), name).toEqual([]);
	}
});

test.runIf(browserPath)(
	'going from page to page, and trying out a winter, keeps to it',
	async () => {
		const page = await watched();
		await page.goto(LAKE);
		const part = page.getByRole('region', { name: 'What if?' });
		await part.scrollIntoViewIfNeeded();
		await part.getByLabel('Air from today on').press('End');
		await part.getByText('Estimated anew.').waitFor();
		await page.getByRole('link', { name: 'Method' }).click();
		await page.waitForURL('**/method');
		await page.goBack();
		await page.getByRole('region', { name: 'What if?' }).waitFor();
		expect(await refusedOn(page)).toEqual([]);
		// Heard, but not seen.
		const told = await page.locator('#svelte-announcer').boundingBox();
		expect(told).toMatchObject({ width: 1, height: 1 });
	}
);

test.runIf(browserPath)('a page that refuses has our look, within its own policy', async () => {
	const page = await watched();
	const response = await page.goto('/look/nowhere');
	expect(response?.status()).toBe(404);
	expect(response?.headers()['content-security-policy']).toContain("default-src 'none'");
	expect(await refusedOn(page)).toEqual([]);
	const colours = () =>
		page.evaluate(() => {
			const { color } = getComputedStyle(document.body);
			const paper = [document.body, document.documentElement].map(
				(of) => getComputedStyle(of).backgroundColor
			);
			return { color, paper: paper.find((each) => each !== 'rgba(0, 0, 0, 0)') };
		});
	const here = await colours();
	await page.goto('/');
	expect(here).toEqual(await colours());
});

test.runIf(browserPath)('what somebody smuggles into a page does not run', async () => {
	const page = await watched();
	await page.goto(LAKE);
	await page.evaluate(() => {
		const add = (made: HTMLElement) => document.body.append(made);
		add(Object.assign(document.createElement('script'), { textContent: 'window.ran = 1' }));
		add(Object.assign(document.createElement('img'), { src: 'https://elsewhere.example/a.png' }));
		const holder = document.createElement('div');
		holder.innerHTML = '<img src="/x.png" onerror="window.ran = 2"><p style="color: red">';
		add(holder);
	});
	await expect.poll(async () => (await refusedOn(page)).length).toBeGreaterThan(3);
	const directives = (await refusedOn(page)).map((line) => line.split(':', 1)[0]);
	expect(new Set(directives)).toEqual(
		new Set(['script-src-elem', 'img-src', 'script-src-attr', 'style-src-attr'])
	);
	expect(await page.evaluate(() => 'ran' in window)).toBe(false);
	// The browser has noted these as errors, as it should.
	(page as Page & { problems: string[] }).problems.length = 0;
});

test('a page that is kept is told again with the policy that its own scripts are named in', async () => {
	for (let time = 0; time < 2; time++) {
		const response = await fetch(app.url(LAKE));
		const policy = response.headers.get('content-security-policy') ?? '';
		const text = await response.text();
		const scripts = [...text.matchAll(/<script>([\s\S]*?)<\/script>/g)];
		const hashes = scripts.map(([, script = '']) =>
			createHash('sha256').update(script).digest('base64')
		);
		// The template's, and the one that wakes the page.
		expect(hashes).toHaveLength(2);
		const [allowed = ''] = /script-src [^;]*/.exec(policy) ?? [];
		expect([...allowed.matchAll(/'sha256-([^']+)'/g)].map(([, hash]) => hash).toSorted()).toEqual(
			hashes.toSorted()
		);
	}
});

test('a page found unchanged keeps the policy it came with', async () => {
	const { headers } = await fetch(app.url('/lakes/pinder-lake'));
	const again = await fetch(app.url('/lakes/pinder-lake'), {
		headers: { 'if-none-match': headers.get('etag') ?? '' }
	});
	expect(again.status).toBe(304);
	expect(again.headers.get('content-security-policy')).toBeNull();
});

test('files, data and refusals say as well that nothing may be made of them', async () => {
	const home = await (await fetch(app.url('/'))).text();
	const script = /href="([^"]*_app\/immutable[^"]*\.css)"/.exec(home)?.[1] ?? '';
	for (const path of ['/favicon.svg', `/${script}`, '/api/v1/lakes', '/api/nowhere', '/nowhere']) {
		const { headers } = await fetch(app.url(path));
		expect(headers.get('x-content-type-options'), path).toBe('nosniff');
		expect(headers.get('cross-origin-resource-policy'), path).toBe('same-origin');
		expect(headers.get('content-security-policy'), path).toContain("frame-ancestors 'none'");
	}
});
