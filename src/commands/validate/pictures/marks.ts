import type { Phase } from '../lake-winter.ts';
import { markup, NOTHING, type Markup } from './markup.ts';
import { short } from './plot.ts';
import type { Summary } from './summary.ts';

export type Point = readonly [x: number, y: number];

/** Many small marks in one path: dots for growth, rings with corners for decay. */
export function cloud(phase: Phase, points: readonly Point[]): Markup {
	if (points.length === 0) return NOTHING;
	const each = phase === 'growth' ? dot : corners;
	return markup`<path class="cloud ${phase}" d="${points.map(each).join('')}"/>`;
}

function dot([x, y]: Point): string {
	return `M${short(x)} ${short(y)}h0`;
}

function corners([x, y]: Point): string {
	return `M${short(x - 2)} ${short(y - 2)}h4v4h-4z`;
}

const RADIUS = 4;

/** A mean with the bar of four in five beside it. */
export function meanAndBar(
	phase: Phase,
	{ bias, low, high }: Summary,
	at: (error: number) => Point
): Markup {
	const [from, to, middle] = [at(low), at(high), at(bias)];
	return markup`<path class="bar ${phase}" d="${line([from, to])}"/>${mark(phase, middle)}`;
}

/** One large mark: round for growth, a square for decay. */
export function mark(phase: Phase, [x, y]: Point, kind = ''): Markup {
	const [cx, cy] = [short(x), short(y)];
	return phase === 'growth'
		? markup`<circle class="mark growth ${kind}" cx="${cx}" cy="${cy}" r="${RADIUS}"/>`
		: markup`<rect class="mark decay ${kind}" x="${short(x - RADIUS)}" y="${short(y - RADIUS)}" width="${2 * RADIUS}" height="${2 * RADIUS}"/>`;
}

export function line(points: readonly Point[]): string {
	return `M${points.map(([x, y]) => `${short(x)} ${short(y)}`).join('L')}`;
}
