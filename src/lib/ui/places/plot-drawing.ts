import type { Position } from '#lib/model/distance.ts';
import { toLocal } from '#lib/model/places/local-metres.ts';
import { roundWay } from '../format/way.ts';
import type { Units } from '../units-setting.ts';
import type { Point } from './is-crossed.ts';
import { placeLabels, type Label } from './label-places.ts';

/** A place on the plot. */
export interface PlotPlace {
	id: string;
	/** What the list calls it by. */
	number: string;
	name: string;
	position: Position;
	/** `known`: its holes count; `unknown`: they don't, or there are none; `plain`: no weak spot. */
	state: 'known' | 'unknown' | 'plain';
}

export interface PlotRoute {
	id: string;
	name: string;
	/** In their order; a point without a position breaks the line. */
	points: (Position | null)[];
}

export interface PlotDrawing {
	width: number;
	height: number;
	size: number;
	marks: { id: string; x: number; y: number; state: PlotPlace['state']; label: Label | null }[];
	/** One path for each stretch of each route. */
	lines: { id: string; path: string }[];
	bar: { x: number; y: number; width: number; text: string };
}

const LETTER_px = 13;
const RADIUS_px = 6;
const EDGE_px = 26;
/** Below the places, for the scale bar and the arrow to the north. */
const FOOT_px = 40;
/** A lone place is shown in a square this wide. */
const LEAST_SPAN_m = 100;
/** A long name would fill the plot; the list has it whole. */
const LONGEST_NAME = 22;

/**
 * A lake's own places drawn to scale, north up, with a scale bar: no map, for there is none.
 *
 * `null` where no place has a position. A flat plan, right to half a percent within some tens of
 * kilometres.
 */
export function plotDrawing(
	places: readonly PlotPlace[],
	routes: readonly PlotRoute[],
	width: number,
	units: Units
): PlotDrawing | null {
	const positions = [
		...places.map(({ position }) => position),
		...routes.flatMap(({ points }) => points.flatMap((point) => point ?? []))
	];
	const [first] = positions;
	if (!first) return null;
	const local = positions.map((position) => toLocal(first, position));
	const [west, east] = range(local.map(({ east_m }) => east_m));
	const [south, north] = range(local.map(({ north_m }) => north_m));
	const span = { east_m: east - west, north_m: north - south };
	const most_px = width - 2 * EDGE_px;
	const scale = most_px / Math.max(LEAST_SPAN_m, span.east_m, span.north_m / MOST_TALL);
	const height = Math.max(MOST_FLAT * width, span.north_m * scale + 2 * EDGE_px) + FOOT_px;
	const middle = { x: width / 2, y: (height - FOOT_px) / 2 };
	const at = (position: Position) => {
		const { east_m, north_m } = toLocal(first, position);
		return {
			x: round(middle.x + (east_m - (west + east) / 2) * scale),
			y: round(middle.y - (north_m - (south + north) / 2) * scale)
		};
	};
	const spots = places.map(({ number, name, position }) => ({
		...at(position),
		short: number,
		long: `${number} ${shortened(name)}`
	}));
	const stretches = routes.map((route) => stretchesOf(route, at));
	const labels = placeLabels(spots, {
		width,
		height: height - FOOT_px,
		size: LETTER_px,
		radius: RADIUS_px,
		lines: stretches.flat()
	});
	const bar = roundWay(most_px / 3 / scale, units);
	return {
		width,
		height: round(height),
		size: LETTER_px,
		marks: places.map(({ id, state }, index) => ({
			id,
			state,
			x: spots[index]?.x ?? 0,
			y: spots[index]?.y ?? 0,
			label: labels[index] ?? null
		})),
		lines: routes.flatMap(({ id }, route) =>
			(stretches[route] ?? []).map((points, index) => ({
				id: `${id}-${index}`,
				path: `M${points.map(({ x, y }) => `${x} ${y}`).join('L')}`
			}))
		),
		bar: {
			x: EDGE_px,
			y: round(height - FOOT_px / 2),
			width: round(bar.way_m * scale),
			text: bar.text
		}
	};
}

/** A tall lake is drawn no taller than this beside its width, a flat one no flatter. */
const MOST_TALL = 1.2;
const MOST_FLAT = 0.5;

/** The parts of a route that are known from end to end. */
function stretchesOf({ points }: PlotRoute, at: (position: Position) => Point): Point[][] {
	const stretches: Point[][] = [[]];
	for (const point of points) {
		if (point) stretches.at(-1)?.push(at(point));
		else stretches.push([]);
	}
	return stretches.filter((stretch) => stretch.length > 1);
}

function shortened(name: string): string {
	const letters = [...name];
	return letters.length <= LONGEST_NAME ? name : `${letters.slice(0, LONGEST_NAME - 1).join('')}…`;
}

function range(values: readonly number[]): [least: number, most: number] {
	return [Math.min(...values), Math.max(...values)];
}

function round(pixels: number): number {
	return Math.round(pixels * 10) / 10;
}
