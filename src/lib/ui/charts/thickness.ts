import type { ChartDataset } from 'chart.js';
import type { IsoDate } from '#lib/model/calendar.ts';
import { lengthUnit, lengthValue, thickness, thicknessNumber } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import type { AnyChart } from './attach.svelte.ts';
import { withBand, type Band } from './band.ts';
import type { Palette } from './palette.ts';
import { POINT_STYLE, type ReadingPoint } from './reading-points.ts';
import type { SeriesDay } from './series.ts';
import { annotations } from './thickness-marks.ts';
import { grouped, type LoadMark } from './thresholds.ts';
import { LAYOUT, timeAxis, valueAxis, type TimeSpan } from './time-axis.ts';
import { tooltip } from './tooltip.ts';

export interface ThicknessInput {
	days: readonly SeriesDay[];
	/** From 5 to 95 %, with where each kind of weather begins. */
	band?: Omit<Band, 'units'> | null;
	readings: readonly ReadingPoint[];
	anchors: readonly { on: IsoDate; before_m: number; after_m: number }[];
	loads: readonly LoadMark[];
	asOf: IsoDate;
	span: TimeSpan;
	units: Units;
}

/** What a point shows, and what it says when pointed at. */
interface Point {
	x: IsoDate;
	y: number;
	says: string;
}

/** Clear and white ice as areas, the estimate and its lower bounds as lines, readings as points. */
export function thicknessChart(input: ThicknessInput, palette: Palette): AnyChart {
	const end = top(input);
	const chart: AnyChart = {
		type: 'line',
		data: { datasets: datasets(input, palette) as ChartDataset<'line', unknown[]>[] },
		options: {
			animation: false,
			maintainAspectRatio: false,
			layout: LAYOUT,
			interaction: { mode: 'x', intersect: false },
			scales: {
				x: timeAxis(input.span, palette),
				y: valueAxis({ max: end }, palette)
			},
			plugins: {
				tooltip: tooltip(palette),
				annotation: { clip: false, annotations: annotations(input, end, palette) }
			}
		}
	};
	return input.band ? withBand(chart, { ...input.band, units: input.units }, palette) : chart;
}

/**
 * High enough for all that is drawn and for the next load that isn't carried yet: a whole number in
 * the person's unit.
 */
export function top({ days, band, readings, loads, units }: ThicknessInput): number {
	const drawn = [
		...days.map((day) => day.total_m),
		...(band?.days.map(({ p95_m }) => p95_m) ?? []),
		...readings.flatMap((reading) => [reading.mean_m, ...reading.holes_m])
	];
	const highest_m = Math.max(0.1, ...drawn);
	const next = grouped(loads, units).find(({ required_m }) => required_m > highest_m);
	const step = units.measure === 'metric' ? 10 : 4;
	const room_m = Math.max(highest_m, next?.required_m ?? 0) * 1.06;
	return Math.ceil(lengthValue(room_m, units) / step) * step;
}

function datasets({ days, readings, units }: ThicknessInput, palette: Palette) {
	const line = (label: string, pick: (day: SeriesDay) => number | null) => ({
		label,
		data: points(days, label, units, pick),
		pointRadius: 0,
		pointHitRadius: 0,
		borderWidth: 0
	});
	const area = { order: 3 };
	return [
		{ ...area, ...line('clear', (d) => d.clear_m), fill: 'origin', backgroundColor: palette.clear },
		{ ...area, ...stacked(days, units), fill: '-1', backgroundColor: palette.white },
		{
			...line('at least', (d) => d.totalLower_m),
			order: 2,
			borderColor: palette.deep,
			borderWidth: 1
		},
		{
			...line('estimate', (d) => d.total_m),
			order: 2,
			fill: '-1',
			backgroundColor: palette.hatch,
			borderColor: palette.deep,
			borderWidth: 2.5
		},
		{
			...line('counts as at least', (d) => d.effectiveLower_m),
			order: 1,
			borderColor: palette.ink,
			borderWidth: 2,
			borderDash: [5, 4]
		},
		...readingSets(readings, units, palette)
	];
}

/** White ice lies on the clear, so its area ends at their sum; what it says is its own thickness. */
function stacked(days: readonly SeriesDay[], units: Units) {
	const data = days.map((day) => ({
		x: day.on,
		y: lengthValue(day.clear_m + day.white_m, units),
		says: `white ${thickness(day.white_m, units)}`
	}));
	return { label: 'white', data, pointRadius: 0, pointHitRadius: 0, borderWidth: 0 };
}

function readingSets(readings: readonly ReadingPoint[], units: Units, palette: Palette) {
	const holes = readings.flatMap((reading) =>
		reading.holes_m.map((hole_m) => ({ x: reading.on, y: lengthValue(hole_m, units), says: '' }))
	);
	const look = {
		order: 0,
		showLine: false,
		borderColor: palette.ink,
		backgroundColor: palette.sheet
	};
	return [
		{ ...look, label: 'hole', data: holes, pointRadius: 2, backgroundColor: palette.ink },
		{
			...look,
			label: 'reading',
			data: readings.map((reading) => readingPoint(reading, units)),
			pointRadius: 5.5,
			pointBorderWidth: 2,
			pointStyle: readings.map(({ kind }) => POINT_STYLE[kind])
		}
	];
}

function readingPoint({ on, kind, place, mean_m, holes_m }: ReadingPoint, units: Units): Point {
	const where = place ? ` at ${place}` : '';
	const holes = holes_m.map((hole_m) => thicknessNumber(hole_m, units)).join(', ');
	const says = {
		measured: `read ${holes} ${lengthUnit(units)}${where}`,
		atLeast: `at least ${thickness(mean_m, units)}${where}`,
		wentThrough: `went through${where}`
	}[kind];
	return { x: on, y: lengthValue(mean_m, units), says };
}

function points(
	days: readonly SeriesDay[],
	label: string,
	units: Units,
	pick: (day: SeriesDay) => number | null
): Point[] {
	return days.flatMap((day) => {
		const value_m = pick(day);
		if (value_m === null) return [];
		const says = `${label} ${thickness(value_m, units)}`;
		return [{ x: day.on, y: lengthValue(value_m, units), says }];
	});
}
