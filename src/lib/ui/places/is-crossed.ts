import type { Box } from './label-places.ts';

export interface Point {
	x: number;
	y: number;
}

/** Whether a straight line from one point to another runs through a box. */
export function isCrossed({ x, y, width, height }: Box, from: Point, to: Point): boolean {
	const [dx, dy] = [to.x - from.x, to.y - from.y];
	// What share of the way lies between each pair of sides: the clipping of Liang and Barsky 1984.
	const sides: [step: number, room: number][] = [
		[-dx, from.x - x],
		[dx, x + width - from.x],
		[-dy, from.y - y],
		[dy, y + height - from.y]
	];
	let [enters, leaves] = [0, 1];
	for (const [step, room] of sides) {
		if (step === 0 && room < 0) return false;
		if (step < 0) enters = Math.max(enters, room / step);
		if (step > 0) leaves = Math.min(leaves, room / step);
	}
	return enters <= leaves;
}
