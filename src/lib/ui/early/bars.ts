import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import { shortDay } from '../format/day.ts';

/** A day to come: from where to where it is likely to lie, and the middle, in the picture's own measure. */
export interface BarDay {
	on: IsoDate;
	low: number;
	high: number;
	/** Marked across the bar; `null` for a bar that is filled from zero. */
	middle: number | null;
	isForecast: boolean;
}

export interface BarsInput {
	days: readonly BarDay[];
	/** Top of the picture in the same measure; zero is its foot. */
	top: number;
	/** Marks across the picture. */
	lines: readonly { at: number; text: string }[];
	weekend: readonly IsoDate[];
}

/** Sideways in percent of the width, upright in pixels. */
export interface BarsDrawing {
	height: number;
	foot: number;
	bars: {
		on: IsoDate;
		x: number;
		width: number;
		y: number;
		height: number;
		middleY: number | null;
		isForecast: boolean;
	}[];
	weekend: { on: IsoDate; x: number; width: number }[];
	lines: { y: number; textY: number; text: string }[];
	labels: { on: IsoDate; x: number; anchor: 'middle' | 'end'; text: string }[];
	/** Where the forecast ends; `null` where there is none, or nothing after it. */
	forecastEnds: number | null;
}

const TOP = 18;
const BODY = 180;
const FOOT = TOP + BODY;
const UNDER = 24;
const LABEL = 15;
/** Left of the bars, for what the lines across them say; in percent. */
const MARGIN = 15;
/** Labels that a phone has room for. */
const MOST_LABELS = 5;

/** A bar a day, over the marks it is held against. */
export function barsDrawing({ days, top, lines, weekend }: BarsInput): BarsDrawing {
	const slot = (100 - MARGIN) / Math.max(1, days.length);
	const up = (value: number) => FOOT - (Math.min(value, top) / top) * BODY;
	const first = days[0]?.on;
	const at = (on: IsoDate) =>
		first === undefined ? MARGIN : MARGIN + daysBetween(first, on) * slot;
	const lastForecast = days.findLastIndex(({ isForecast }) => isForecast);
	const every = Math.ceil(days.length / MOST_LABELS);
	return {
		height: FOOT + UNDER,
		foot: FOOT,
		bars: days.map(({ on, low, high, middle, isForecast }) => ({
			on,
			x: at(on) + 0.16 * slot,
			width: 0.68 * slot,
			y: up(high),
			height: Math.max(1, up(low) - up(high)),
			middleY: middle === null ? null : up(middle),
			isForecast
		})),
		weekend: weekend
			.filter((on) => days.some((day) => day.on === on))
			.map((on) => ({ on, x: at(on), width: slot })),
		lines: placed(
			lines.filter(({ at: value }) => value <= top).map((line) => ({ ...line, y: up(line.at) }))
		),
		labels: days
			.filter((_, index) => index % every === 0)
			.map(({ on }) => {
				// Centred under the last bar it would stand out of the picture.
				const isLast = on === days.at(-1)?.on;
				const x = at(on) + (isLast ? slot : slot / 2);
				return { on, x, anchor: isLast ? 'end' : 'middle', text: shortDay(on) };
			}),
		forecastEnds:
			lastForecast < 0 || lastForecast === days.length - 1
				? null
				: MARGIN + (lastForecast + 1) * slot
	};
}

/** Texts of lines that lie close move up until each can be read. */
function placed(lines: readonly { y: number; text: string }[]): BarsDrawing['lines'] {
	let lowest = FOOT;
	return lines
		.toSorted((a, b) => b.y - a.y)
		.map(({ y, text }) => {
			const textY = Math.min(y - 3, lowest - LABEL);
			lowest = textY;
			return { y, textY, text };
		});
}
