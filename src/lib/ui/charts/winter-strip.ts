import { addDays, dayNumber, daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import type { Reading } from '#lib/model/reading.ts';
import { shortDay } from '../format/day.ts';
import { requirement } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import { SHORTEST_MONTH_d } from './month-name.ts';
import type { StripData, StripLoad } from './strip-data.ts';
import { runs, type Run } from './strip-runs.ts';

/** Sideways in percent of the picture's width, so that it gets narrower; down in pixels. */
export interface StripDrawing {
	height: number;
	/** Where the rows begin and end. */
	top: number;
	foot: number;
	rows: DrawnRow[];
	borders: { x: number; y: number; anchor: 'start' | 'end'; text: string; kind: string }[];
	months: { x: number; text: string | null }[];
	readings: { x: number; kind: Reading['kind'] }[];
}

export interface DrawnRow {
	id: string;
	name: string;
	/** What it asks for; a long name is cut short before it. */
	asks: string;
	/** Baseline of the name, top of the inked band. */
	nameY: number;
	y: number;
	inks: (Stretch & { opacity: number })[];
	hatched: Stretch[];
	/** Days without an estimate. */
	blank: Stretch[];
	marks: { kind: 'expected' | 'likely' | 'until'; x: number }[];
}

interface Stretch {
	x: number;
	width: number;
}

export interface StripInput {
	strip: StripData;
	readings: readonly Pick<Reading, 'on' | 'kind'>[];
	units: Units;
}

export const BAND_px = 20;
const LABEL_px = 17;
const PITCH_px = 53;
const NAME_px = 14;
const AXIS_px = 22;
/** From this chance on a warm spell would rather close a day than not. */
const THAW_percent = 50;

/** A row a load, a column a day, inked by the chance that the chart minimum is met. */
export function winterStrip({ strip, readings, units }: StripInput): StripDrawing {
	const count = daysBetween(strip.from, strip.to) + 1;
	const at = (on: IsoDate) => percent(daysBetween(strip.from, on), count);
	const top = strip.borders.length * LABEL_px + 6;
	const foot = top + strip.loads.length * PITCH_px;
	return {
		height: foot + AXIS_px,
		top,
		foot,
		rows: strip.loads.map((load, index) =>
			drawnRow(load, top + index * PITCH_px, { at, count, units })
		),
		borders: strip.borders.map(({ on, kind, text }, index) => ({
			x: at(on),
			y: (index + 1) * LABEL_px - 3,
			anchor: at(on) < 50 ? 'start' : 'end',
			text,
			kind
		})),
		months: months(strip).map(({ on, text }) => ({ x: at(on), text })),
		readings: readings
			.filter(({ on }) => on >= strip.from && on <= strip.to)
			.map(({ on, kind }) => ({ x: at(on) + percent(0.5, count), kind }))
	};
}

interface Scale {
	at: (on: IsoDate) => number;
	count: number;
	units: Units;
}

function drawnRow(load: StripLoad, y: number, { at, count, units }: Scale): DrawnRow {
	const stretch = ({ from, length }: Run<unknown>) => ({
		x: percent(from, count),
		width: percent(length, count)
	});
	const inks = runs(
		load.met_percent.map((met) => (met === null ? null : Math.floor(met / 5) / 20))
	);
	const thaws = runs(load.thaw_percent.map((thaw) => thaw !== null && thaw >= THAW_percent));
	const marks = [
		{ kind: 'expected' as const, on: load.expectedFrom },
		{ kind: 'likely' as const, on: load.likelyFrom },
		{ kind: 'until' as const, on: load.until && addDays(load.until, 1) }
	];
	return {
		id: load.id,
		name: load.name,
		asks: asks(load, units),
		nameY: y + NAME_px,
		y: y + NAME_px + 5,
		inks: inks.flatMap((run) => (run.value ? [{ ...stretch(run), opacity: run.value }] : [])),
		hatched: thaws.filter(({ value }) => value).map(stretch),
		blank: inks.filter(({ value }) => value === null).map(stretch),
		marks: marks.flatMap(({ kind, on }) => (on === null ? [] : [{ kind, x: at(on) }]))
	};
}

function asks({ required_m }: StripLoad, units: Units): string {
	return required_m === null ? 'ask an engineer' : `asks ${requirement(required_m, units)}`;
}

/** First days of the months in the strip; a month that is hardly in it goes unnamed. */
function months({ from, to }: StripData): { on: IsoDate; text: string | null }[] {
	const days = Array.from({ length: daysBetween(from, to) + 1 }, (_, index) =>
		addDays(from, index)
	);
	return days
		.filter((on) => on.endsWith('-01'))
		.map((on) => ({
			on,
			text: dayNumber(to) - dayNumber(on) < SHORTEST_MONTH_d ? null : shortDay(on).slice(2)
		}));
}

function percent(part: number, whole: number): number {
	return Math.round((part / whole) * 1e5) / 1e3;
}
