import type { AnnotationOptions } from 'chartjs-plugin-annotation';
import { lengthValue } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import { dayLine } from './day-line.ts';
import type { Palette } from './palette.ts';
import { POINT_STYLE, type ReadingPoint } from './reading-points.ts';
import type { ThicknessInput } from './thickness.ts';
import { thresholds, type Threshold } from './thresholds.ts';

/** Height of the chart's box, and of the plot in it without the date scale. */
export const THICKNESS_px = 360;
const PLOT_px = 328;

/** What the loads ask for, where readings moved the estimate, and the day knowledge ends. */
export function annotations(input: ThicknessInput, end: number, palette: Palette) {
	const lines: Record<string, AnnotationOptions> = {};
	const marks = thresholds(input.loads, input.units, {
		end,
		height_px: PLOT_px,
		carried_m: lowest_m(input)
	});
	for (const mark of marks) {
		lines[`asks ${mark.label}`] = thresholdLine(mark, palette);
	}
	for (const { on, before_m, after_m } of input.anchors) {
		lines[`anchor ${on}`] = {
			type: 'line',
			xMin: on,
			xMax: on,
			yMin: lengthValue(before_m, input.units),
			yMax: lengthValue(after_m, input.units),
			borderColor: palette.ink,
			borderWidth: 4
		};
	}
	input.readings.forEach((reading, index) => {
		lines[`reading ${index}`] = readingMark(reading, input.units, palette);
	});
	lines['as of'] = dayLine(input.asOf, input.span, palette);
	return lines;
}

/** Where the lowest curve ends; a label's height below it nothing is drawn. */
function lowest_m({ days, asOf }: ThicknessInput): number {
	const last = days.findLast(({ on }) => on <= asOf);
	return last ? 0.85 * Math.min(last.total_m, last.effectiveLower_m ?? last.total_m) : 0;
}

function thresholdLine({ value, label, side, shift_px }: Threshold, palette: Palette) {
	return {
		type: 'line',
		yMin: value,
		yMax: value,
		borderColor: palette.mark,
		borderWidth: 1.5,
		borderDash: [10, 4],
		label: {
			display: true,
			content: label,
			position: side,
			color: palette.mark,
			backgroundColor: palette.sheet,
			font: { family: palette.font, size: 13, weight: 'normal' },
			padding: { x: 4, y: 0 },
			yAdjust: shift_px - 9,
			z: 1
		}
	} satisfies AnnotationOptions;
}

/** Over the labels, which would else hide the first readings of a winter. */
function readingMark({ on, kind, mean_m }: ReadingPoint, units: Units, palette: Palette) {
	return {
		type: 'point',
		xValue: on,
		yValue: lengthValue(mean_m, units),
		radius: 5.5,
		borderWidth: 2,
		borderColor: palette.ink,
		backgroundColor: palette.sheet,
		pointStyle: POINT_STYLE[kind],
		drawTime: 'afterDraw'
	} satisfies AnnotationOptions;
}
