import type { AnnotationOptions } from 'chartjs-plugin-annotation';
import { daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import { shortDay } from '../format/day.ts';
import type { Palette } from './palette.ts';
import type { SeriesDay } from './series.ts';
import type { TimeSpan } from './time-axis.ts';

/** The line where days to come begin; none where there are none to come. */
export function asOfLine(ahead: readonly SeriesDay[], span: TimeSpan, palette: Palette) {
	const [first] = ahead;
	return first ? { 'as of': dayLine(first.on, span, palette) } : {};
}

/** The day asked for, where knowledge ends. */
export function dayLine(on: IsoDate, span: TimeSpan, palette: Palette) {
	const isEarly = daysBetween(span.from, on) < 0.25 * daysBetween(span.from, span.to);
	return {
		type: 'line',
		xMin: on,
		xMax: on,
		borderColor: palette.ink,
		borderWidth: 1.5,
		borderDash: [2, 3],
		label: {
			display: true,
			content: shortDay(on),
			position: 'end',
			color: palette.ink,
			backgroundColor: palette.sheet,
			font: { family: palette.font, size: 13, weight: 'bold' },
			padding: { x: 4, y: 1 },
			xAdjust: isEarly ? 26 : -26,
			z: 1
		}
	} satisfies AnnotationOptions;
}
