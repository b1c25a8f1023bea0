import type { ScaleOptionsByType, TimeScaleOptions } from 'chart.js';
import { addDays, daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import { grouped } from '../format/number.ts';
import { monthName } from './month-name.ts';
import type { Palette } from './palette.ts';

/** The days that all pictures of a winter share, so that they can be read one under the other. */
export interface TimeSpan {
	from: IsoDate;
	to: IsoDate;
}

/** Width of the scale on the left, the same in each picture so that their days line up. */
export const SCALE_WIDTH_px = 46;

/** No room of its own for points at an edge, which would push one picture's days off the others'. */
export const LAYOUT = { autoPadding: false, padding: { top: 6, right: 6 } };

/** From freeze-up to a little past the last day that must be seen; never less than a month. */
export function timeSpan(from: IsoDate, last: IsoDate): TimeSpan {
	const days = Math.max(28, daysBetween(from, last));
	return { from, to: addDays(from, Math.ceil(days * 1.04)) };
}

/** A time axis in months, or in days while the winter is young. */
export function timeAxis({ from, to }: TimeSpan, palette: Palette) {
	const isLong = daysBetween(from, to) > 75;
	return {
		type: 'time',
		min: from,
		max: to,
		time: {
			unit: isLong ? 'month' : 'day',
			displayFormats: { month: 'MMM', day: 'd MMM' },
			tooltipFormat: 'd MMM yyyy'
		},
		// A picture of bars would draw its months between the days.
		offset: false,
		grid: { color: palette.rule, tickColor: palette.line, offset: false },
		border: { color: palette.line },
		ticks: {
			color: palette.soft,
			font: { family: palette.font, size: 13 },
			maxRotation: 0,
			autoSkipPadding: isLong ? 16 : 40,
			// Months are named from their first day on, as on the strip: pushed inward at an edge, a name
			// would stand close to the next.
			...(isLong
				? {
						align: 'start' as const,
						callback: (at_ms: string | number) => monthName(Number(at_ms), to)
					}
				: { align: 'inner' as const })
		}
	} satisfies DeepPartial<TimeScaleOptions> & { type: 'time' };
}

/** A plain scale on the left from zero. `range` ends it at a number, or lets it end on a round one. */
export function valueAxis(range: { max: number } | { suggestedMax: number }, palette: Palette) {
	return {
		type: 'linear',
		min: 0,
		...range,
		afterFit: (scale: { width: number }) => {
			scale.width = SCALE_WIDTH_px;
		},
		grid: { color: palette.rule, tickColor: palette.line },
		border: { color: palette.line },
		ticks: {
			color: palette.soft,
			font: { family: palette.font, size: 13 },
			maxTicksLimit: 6,
			callback: (value: string | number) => tickNumber(Number(value)),
			// A last number that is no step of the scale would stand close above the one before.
			includeBounds: false,
			padding: 2
		}
	} satisfies DeepPartial<ScaleOptionsByType<'linear'>> & { type: 'linear' };
}

/** By hand: the library would ask the machine's own number formats, which a phone is slow to load. */
function tickNumber(value: number): string {
	return Math.abs(value) < 1000 ? String(Number(value.toFixed(2))) : grouped(value);
}

type DeepPartial<T> = T extends object ? { [Key in keyof T]?: DeepPartial<T[Key]> } : T;
