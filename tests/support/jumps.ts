import type { Page } from 'playwright-core';

declare global {
	interface Window {
		/** Each jump of what was on the screen, with what jumped. */
		jumps: { value: number; what: string[] }[];
	}
}

/** Cumulative layout shift; what is widely called good is 0.1. */
export const MOST_JUMPS = 0.02;

/** Keeps what jumps on a page in its `window.jumps`. */
export function watchJumps(page: Page): Promise<unknown> {
	return page.addInitScript(() => {
		interface Shift extends PerformanceEntry {
			value: number;
			hadRecentInput: boolean;
			sources: { node: Node | null }[];
		}
		window.jumps = [];
		new PerformanceObserver((list) => {
			for (const { value, hadRecentInput, sources } of list.getEntries() as Shift[]) {
				if (hadRecentInput) continue;
				const what = sources.map(({ node }) => node?.textContent?.trim().slice(0, 40) ?? '');
				window.jumps.push({ value, what });
			}
		}).observe({ type: 'layout-shift', buffered: true });
	});
}
