import { bandPlace, type PredictedReading } from '#lib/model/hindsight.ts';
import { shortDay } from '../format/day.ts';
import type { Units } from '../units-setting.ts';
import { rulerTicks } from './ruler.ts';

/** Sideways in percent, so that it gets narrower; down in pixels. */
export interface HindsightDrawing {
	height: number;
	/** Where zero is. */
	foot: number;
	ticks: { y: number; text: string }[];
	columns: DrawnReading[];
}

export interface DrawnReading {
	id: string;
	x: number;
	/** Of the picture's width. */
	width: number;
	band: { y: number; height: number } | null;
	/** Where the estimate lies. */
	estimateY: number | null;
	measuredY: number;
	isOutside: boolean;
	/** Its day, where there is room. */
	text: string | null;
}

const PLOT_px = 240;
const TOP_px = 8;
const AXIS_px = 24;
/** The scale stands in front of the first column. */
const SCALE_percent = 12;
const WIDEST_percent = 4;
/** Days named under the columns, for the narrowest screen. */
const MOST_NAMED = 5;
const SHORTEST_m = 0.1;

/** A column a reading: the band that had been predicted, the estimate in it, and what was drilled. */
export function hindsightDrawing(
	readings: readonly PredictedReading[],
	units: Units
): HindsightDrawing {
	const top_m = Math.max(
		SHORTEST_m,
		...readings.flatMap(({ predicted: { p50, p95 }, measured_m }) => [
			p50 ?? 0,
			p95 ?? 0,
			measured_m
		])
	);
	const y = (metres: number) => TOP_px + PLOT_px * (1 - metres / top_m);
	const pitch = (100 - SCALE_percent) / Math.max(1, readings.length);
	const every = Math.ceil(readings.length / MOST_NAMED);
	return {
		height: TOP_px + PLOT_px + AXIS_px,
		foot: y(0),
		ticks: rulerTicks(top_m, units).flatMap(({ at_m, text }) =>
			text === null ? [] : [{ y: y(at_m), text }]
		),
		columns: readings.map((reading, index) => {
			const { predicted, measured_m } = reading;
			const { p05, p50, p95 } = predicted;
			return {
				id: reading.readingId,
				x: SCALE_percent + (index + 0.5) * pitch,
				width: Math.min(WIDEST_percent, pitch * 0.6),
				band: p05 === null || p95 === null ? null : { y: y(p95), height: y(p05) - y(p95) },
				estimateY: p50 === null ? null : y(p50),
				measuredY: y(measured_m),
				isOutside: (bandPlace(reading) ?? 'inside') !== 'inside',
				text: index % every === 0 ? shortDay(reading.on) : null
			};
		})
	};
}
