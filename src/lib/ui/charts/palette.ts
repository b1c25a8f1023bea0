const TOKENS = {
	sheet: '--sheet',
	ink: '--ink',
	soft: '--soft',
	rule: '--rule',
	line: '--line',
	mark: '--mark',
	clear: '--clear-wash',
	white: '--white-wash',
	deep: '--deep',
	fade: '--fade'
} as const;

/** The page's own colours, resolved for the canvas. */
export type Palette = Record<keyof typeof TOKENS, string> & { font: string };

/** A canvas can't read `light-dark()`, so an element wears each token and tells what it became. */
export function readPalette(near: HTMLElement): Palette {
	const probe = document.createElement('i');
	(near.parentElement ?? document.body).append(probe);
	const worn = getComputedStyle(probe);
	const colours = Object.entries(TOKENS).map(([name, token]) => {
		probe.style.color = `var(${token})`;
		return [name, worn.color];
	});
	const palette = { ...Object.fromEntries(colours), font: worn.fontFamily } as Palette;
	probe.remove();
	return palette;
}
