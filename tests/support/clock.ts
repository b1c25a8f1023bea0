import { pathToFileURL } from 'node:url';
import type { BrowserContext } from 'playwright-core';

const PRELOADED = pathToFileURL('tests/support/shifted-clock.mjs').href;

/** Settings that start the app at an instant, from which its clock goes on. */
export function startingAt(instant: string): Record<string, string> {
	return { CLOCK_AT: instant, NODE_OPTIONS: `--import=${PRELOADED}` };
}

/** Starts the clock of a browser's pages at an instant. */
export function startBrowserAt(context: BrowserContext, instant: string): Promise<unknown> {
	return context.addInitScript(
		(shift_ms: number) => {
			const Real = Date;
			globalThis.Date = class extends Real {
				constructor(...parts: []) {
					if (parts.length === 0) super(Real.now() + shift_ms);
					else super(...parts);
				}

				static override now() {
					return Real.now() + shift_ms;
				}
			} as DateConstructor;
		},
		Date.parse(instant) - Date.now()
	);
}
