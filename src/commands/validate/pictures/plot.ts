import { markup, type Content, type Markup } from './markup.ts';
import type { Scale } from './scale.ts';
import { number } from './words.ts';

/** Where values lie in a plot, in its own units. */
export interface Place {
	x: (value: number) => number;
	y: (value: number) => number;
	readonly left: number;
	readonly right: number;
	readonly top: number;
	readonly foot: number;
}

export interface PlotOptions {
	/** What is to be seen, for those who cannot see it. */
	label: string;
	x: Scale;
	y: Scale;
	height?: number;
	/** Room for what stands at the ticks of the upright scale. */
	left?: number;
	draw: (place: Place) => Content;
}

/** A plot is so many units wide; at the narrowest screen a unit is about a pixel. */
export const WIDTH = 320;
const LEFT = 44;
const RIGHT = 20;
const TOP = 26;
const FOOT = 44;

/** A picture with two scales, their rules behind it. */
export function plot({ label, x, y, height = 260, left = LEFT, draw }: PlotOptions): Markup {
	const [right, foot] = [WIDTH - RIGHT, height - FOOT];
	const place: Place = {
		x: (value) => left + ((value - x.from) / (x.to - x.from)) * (right - left),
		y: (value) => foot - ((value - y.from) / (y.to - y.from)) * (foot - TOP),
		left,
		right,
		top: TOP,
		foot
	};
	return markup`<svg viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label="${label}">
${y.ticks.map((tick) => level(tick, y, place))}
${x.ticks.map((tick) => upright(tick, x, place))}
<text class="soft" x="0" y="12">${y.label}</text>
<text class="soft" x="${right}" y="${height - 6}" text-anchor="end">${x.label}</text>
${draw(place)}
</svg>`;
}

function level(tick: number, scale: Scale, { left, right, y }: Place): Markup {
	const at = short(y(tick));
	return markup`<path class="rule${zero(tick, scale)}" d="M${left} ${at}H${right}"/><text class="soft" x="${left - 5}" y="${short(y(tick) + 4)}" text-anchor="end">${textOf(tick, scale)}</text>`;
}

function upright(tick: number, scale: Scale, { top, foot, x }: Place): Markup {
	const at = short(x(tick));
	return markup`<path class="rule${zero(tick, scale)}" d="M${at} ${top}V${foot}"/><text class="soft" x="${at}" y="${foot + 16}" text-anchor="middle">${textOf(tick, scale)}</text>`;
}

/** Zero is told apart where a scale runs past it. */
function zero(tick: number, { from }: Scale): string {
	return from < 0 && Math.abs(tick) < 1e-9 ? ' zero' : '';
}

function textOf(tick: number, { textOf }: Scale): string {
	return textOf ? textOf(tick) : number(tick, Number.isInteger(tick) ? 0 : 1);
}

/** A tenth of a unit is finer than a screen. */
export function short(units: number): number {
	return Math.round(units * 10) / 10;
}
