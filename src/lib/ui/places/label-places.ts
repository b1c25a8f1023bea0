import { isCrossed, type Point } from './is-crossed.ts';

/** A box on a drawing, in its pixels. */
export interface Box {
	x: number;
	y: number;
	width: number;
	height: number;
}

export interface Mark {
	x: number;
	y: number;
	/** The number that the list calls it by, which is always shown. */
	short: string;
	/** Number and name, shown where there is room. */
	long: string;
}

export interface Label {
	text: string;
	/** Where the text stands; the box is a little larger than it. */
	box: Box;
	/** Which end of it the mark is at. */
	anchor: 'start' | 'middle' | 'end';
	/** Far from its mark: a line leads to it. */
	isLed: boolean;
}

/** How wide a letter is beside its height, generously. */
const LETTER = 0.62;
const GAP = 2;
const TURNS = 16;

/** The drawing that labels stand on, and what is drawn on it beside the marks. */
export interface Frame {
	width: number;
	height: number;
	/** Of a letter. */
	size: number;
	/** Of a mark. */
	radius: number;
	/** Lines that a label stands beside, where it can. */
	lines?: readonly (readonly Point[])[];
}

/**
 * A label for each mark, none over another, over a mark or off the drawing: the name where one fits
 * beside its mark, off the lines where there is room, else the number, else the number farther out with a line to it.
 *
 * Greedy, in the order of the marks. `null` for one that fits nowhere, which takes hundreds of marks.
 */
export function placeLabels(
	marks: readonly Mark[],
	{ width, height, size, radius, lines = [] }: Frame
): (Label | null)[] {
	const taken: Box[] = marks.map(({ x, y }) => around(x, y, 2 * radius, 2 * radius));
	const fits = (box: Box, own: Box) =>
		box.x >= 0 &&
		box.y >= 0 &&
		box.x + box.width <= width &&
		box.y + box.height <= height &&
		taken.every((other) => other === own || !isOver(box, other)) &&
		!isOver(box, own);
	const find = (mark: Mark, own: Box, text: string, rings: readonly number[]): Label | null => {
		const boxWidth = text.length * size * LETTER + 2 * GAP;
		const boxHeight = size + 2 * GAP;
		for (const ring of rings) {
			const free = spots(mark, ring, boxWidth, boxHeight).filter((box) => fits(box, own));
			const box = free.find((each) => !isOnLine(each, lines)) ?? free[0];
			if (box) return { text, box, anchor: anchorOf(box, mark), isLed: ring > 2 * radius };
		}
		return null;
	};
	return marks.map((mark, index) => {
		const own = taken[index] ?? around(mark.x, mark.y, 0, 0);
		const near = [radius + GAP];
		const far = Array.from({ length: 30 }, (_, ring) => radius + GAP + ring * size);
		const label =
			find(mark, own, mark.long, near) ??
			find(mark, own, mark.short, near) ??
			find(mark, own, mark.short, far);
		if (label) taken.push(label.box);
		return label;
	});
}

/** Boxes round a mark at a distance: right and left first, then above and below, then all round. */
function spots({ x, y }: Mark, ring: number, width: number, height: number): Box[] {
	const sides = [
		{ x: x + ring, y: y - height / 2, width, height },
		{ x: x - ring - width, y: y - height / 2, width, height },
		{ x: x - width / 2, y: y - ring - height, width, height },
		{ x: x - width / 2, y: y + ring, width, height }
	];
	const round = Array.from({ length: TURNS }, (_, turn) => {
		const angle = (2 * Math.PI * (turn + 0.5)) / TURNS;
		const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
		const centre = { x: x + dx * (ring + width / 2), y: y + dy * (ring + height / 2) };
		return around(centre.x, centre.y, width, height);
	});
	return [...sides, ...round];
}

function isOnLine(box: Box, lines: readonly (readonly Point[])[]): boolean {
	return lines.some((line) =>
		line.slice(1).some((to, index) => isCrossed(box, line[index] ?? to, to))
	);
}

function anchorOf(box: Box, { x }: Mark): Label['anchor'] {
	if (x <= box.x) return 'start';
	return x >= box.x + box.width ? 'end' : 'middle';
}

function around(x: number, y: number, width: number, height: number): Box {
	return { x: x - width / 2, y: y - height / 2, width, height };
}

export function isOver(one: Box, other: Box): boolean {
	return (
		one.x < other.x + other.width &&
		other.x < one.x + one.width &&
		one.y < other.y + other.height &&
		other.y < one.y + one.height
	);
}
