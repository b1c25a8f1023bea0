/** A number to be fitted, and the range that it may take. */
export interface Coordinate {
	name: string;
	low: number;
	high: number;
}

export type Point = Readonly<Record<string, number>>;

/** Steps in shares of a coordinate's range: from the first, halved until under the last. */
const FIRST_STEP = 0.25;
const LAST_STEP = 0.02;

/**
 * A minimum of `cost` near the middle of the ranges: one coordinate after the other moves by a
 * step while that helps, and the step halves when nothing does. Finds a local minimum only.
 */
export function coordinateSearch(
	coordinates: readonly Coordinate[],
	cost: (point: Point) => number
): Point {
	let best = middle(coordinates);
	let bestCost = cost(best);
	for (let step = FIRST_STEP; step >= LAST_STEP;) {
		const before = bestCost;
		for (const coordinate of coordinates) {
			for (const candidate of neighbours(best, coordinate, step)) {
				const candidateCost = cost(candidate);
				if (candidateCost >= bestCost) continue;
				best = candidate;
				bestCost = candidateCost;
			}
		}
		if (bestCost === before) step /= 2;
	}
	return best;
}

export function middle(coordinates: readonly Coordinate[]): Point {
	return Object.fromEntries(coordinates.map(({ name, low, high }) => [name, (low + high) / 2]));
}

function neighbours(from: Point, { name, low, high }: Coordinate, step: number): Point[] {
	const value = from[name] ?? (low + high) / 2;
	return [value - step * (high - low), value + step * (high - low)]
		.filter((moved) => moved >= low && moved <= high)
		.map((moved) => ({ ...from, [name]: moved }));
}
