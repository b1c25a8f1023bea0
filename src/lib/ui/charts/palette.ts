const TOKENS = {
	sheet: '--sheet',
	ink: '--ink',
	soft: '--soft',
	rule: '--rule',
	line: '--line',
	mark: '--mark',
	clear: '--clear-wash',
	white: '--white-wash',
	deep: '--deep'
} as const;

const HATCH_px = 8;

/** The page's own colours, resolved for the canvas. */
export interface Palette extends Record<keyof typeof TOKENS, string> {
	font: string;
	/** Pencil strokes for what is in doubt. */
	hatch: CanvasPattern | string;
}

/** A canvas can't read `light-dark()`, so an element wears each token and tells what it became. */
export function readPalette(near: HTMLElement): Palette {
	const probe = document.createElement('i');
	(near.parentElement ?? document.body).append(probe);
	const worn = getComputedStyle(probe);
	const colours = Object.entries(TOKENS).map(([name, token]) => {
		probe.style.color = `var(${token})`;
		return [name, worn.color];
	});
	const palette = Object.fromEntries(colours) as Record<keyof typeof TOKENS, string>;
	const { fontFamily } = worn;
	probe.remove();
	return { ...palette, font: fontFamily, hatch: hatched(palette.ink) };
}

function hatched(ink: string): CanvasPattern | string {
	const tile = document.createElement('canvas');
	tile.width = HATCH_px;
	tile.height = HATCH_px;
	const pen = tile.getContext('2d');
	if (!pen) return 'transparent';
	pen.strokeStyle = ink;
	pen.globalAlpha = 0.45;
	pen.beginPath();
	// Past both corners, so that the strokes of neighbouring tiles meet.
	for (const shift of [-HATCH_px, 0, HATCH_px]) {
		pen.moveTo(shift - 1, HATCH_px + 1);
		pen.lineTo(shift + HATCH_px + 1, -1);
	}
	pen.stroke();
	return pen.createPattern(tile, 'repeat') ?? 'transparent';
}
