import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright-core';
import { inject } from 'vitest';

export const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };
export const DESK = { viewport: { width: 1440, height: 900 } };

/** `null` where this machine has no browser; the tests that need one are then skipped. */
export const browserPath = inject('browserPath');

const QUIET = [
	'--no-sandbox',
	'--disable-gpu',
	'--disable-background-networking',
	'--disable-component-update',
	'--disable-sync',
	'--no-first-run'
];

export function launch(args: readonly string[] = []): Promise<Browser> {
	if (!browserPath) throw new Error('no browser on this machine');
	return chromium.launch({
		executablePath: browserPath,
		args: [...QUIET, ...args],
		env: { ...process.env, ...inject('browserEnvironment') } as Record<string, string>
	});
}

/** A page of a context of its own; any error on it fails the test that closes it. */
export async function openPage(
	browser: Browser,
	options: BrowserContextOptions
): Promise<Page & { problems: string[] }> {
	// What a device keeps has tests of its own; elsewhere it would hide what the network does.
	const context = await browser.newContext({ serviceWorkers: 'block', ...options });
	const page = Object.assign(await context.newPage(), { problems: [] as string[] });
	page.on('pageerror', (cause) => page.problems.push(String(cause)));
	page.on('console', (message) => {
		if (message.type() === 'error') page.problems.push(message.text());
	});
	return page;
}
