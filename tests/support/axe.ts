import { readFileSync } from 'node:fs';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

const AXE = readFileSync('node_modules/axe-core/axe.min.js', 'utf8');
const LEVELS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** On a phone and at a desk, by day and by night. */
export const LOOKS = [360, 1440].flatMap((width) =>
	(['light', 'dark'] as const).map((colorScheme) => ({ width, colorScheme }))
);

/** To be called once on a page before {@link violations}. */
export function bringAxe(page: Page): Promise<unknown> {
	return page.evaluate(AXE);
}

export function violations(page: Page): Promise<string[]> {
	return page.evaluate(async (levels) => {
		const { axe } = window as unknown as { axe: { run(options: object): Promise<AxeResults> } };
		const found = await axe.run({
			runOnly: { type: 'tag', values: levels },
			resultTypes: ['violations']
		});
		if (found.passes.length < 10) throw new Error('axe has hardly looked at anything');
		return found.violations.flatMap(({ id, help, nodes }) =>
			nodes.map((node) => `${id} (${help}): ${node.html.slice(0, 200)} ${node.failureSummary}`)
		);
	}, LEVELS);
}

/** How far the page is wider than its window. */
export function overhang_px(page: Page): Promise<number> {
	return page.evaluate(() => {
		const { scrollWidth, clientWidth } = document.documentElement;
		return Math.max(0, scrollWidth - clientWidth);
	});
}
