import type { Locator, Page } from 'playwright-core';

/** What the first line of a lake's page says: its estimate first, its lower bound last. */
export async function saidThickness(page: Page) {
	// Its numbers are tied to their units by another kind of space.
	const heading = await page.getByRole('heading', { level: 1 }).innerText();
	const text = heading.replace(/\s/g, ' ');
	const numbers = text.match(/\d+(?:\.\d+)?/g)?.map(Number) ?? [];
	return { text, estimate: numbers[0] ?? Number.NaN, lower: numbers.at(-1) ?? Number.NaN };
}

export function thicknessFigure(page: Page): Locator {
	return page
		.locator('figure')
		.filter({ has: page.getByRole('heading', { name: /^Thickness through the winter/ }) });
}

/** What a canvas shows: how much of it is painted, in how many colours, and a mark of the whole. */
export function drawing(canvas: Locator): Promise<{ paintedFraction: number; colours: number }> {
	return canvas.evaluate((node) => {
		const { width, height } = node as HTMLCanvasElement;
		const context = (node as HTMLCanvasElement).getContext('2d');
		if (!context || width * height === 0) return { paintedFraction: 0, colours: 0 };
		const { data } = context.getImageData(0, 0, width, height);
		const colours = new Set<number>();
		let painted = 0;
		for (let at = 0; at < data.length; at += 4) {
			if ((data[at + 3] ?? 0) === 0) continue;
			painted += 1;
			colours.add(((data[at] ?? 0) << 16) | ((data[at + 1] ?? 0) << 8) | (data[at + 2] ?? 0));
		}
		return { paintedFraction: painted / (width * height), colours: colours.size };
	});
}

/** Opens all that is folded away. */
export async function unfold(page: Page): Promise<void> {
	await page.evaluate(() => {
		for (const node of document.querySelectorAll('details')) {
			node.removeAttribute('name');
			node.open = true;
		}
	});
}
