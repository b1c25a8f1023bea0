import type { TestProject } from 'vitest/node';
import { ensureBuilt } from '../../src/commands/start/build.ts';
import { findBrowser } from '../../src/commands/bench/phone/find-browser.ts';

declare module 'vitest' {
	export interface ProvidedContext {
		/** The browser to drive; `null` where this machine has none. */
		browserPath: string | null;
		/** What the browser's process needs to find its own libraries and fonts. */
		browserEnvironment: Record<string, string>;
	}
}

/** Builds the app once and unpacks the browser once, before any browser test starts. */
export default async function setup(project: TestProject) {
	await ensureBuilt({ quiet: true });
	const { path, environment } = await findBrowser();
	if (!path) {
		process.stderr.write(
			'\nNo browser: the one in @sparticuz/chromium runs on Linux x64 with glibc only, and none is ' +
				'installed. THE BROWSER TESTS ARE SKIPPED. Install Chromium or Chrome to run them.\n\n'
		);
	}
	project.provide('browserPath', path);
	project.provide('browserEnvironment', environment);
}
