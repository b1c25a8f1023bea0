import type { AnnotationOptions } from 'chartjs-plugin-annotation';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { ForecastDay } from '#lib/model/forecast.ts';
import { lengthUnit, lengthValue, thicknessNumber } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import type { AnyChart } from './attach.svelte.ts';
import type { Palette } from './palette.ts';
import { regionsOf, type Border, type Region } from './regions.ts';

/** Between what a hole at a random spot would show, on one day. */
export interface BandDay {
	on: IsoDate;
	p05_m: number;
	p95_m: number;
	region: Region;
}

export interface Band {
	days: readonly BandDay[];
	borders: readonly Border[];
	units: Units;
}

/** Lines are whole while weather is measured, and get thinner in their dashes the less is known. */
const DASHES: Record<Region, number[] | undefined> = {
	observed: undefined,
	forecast: [7, 4],
	climate: [2, 4],
	unknown: [1, 6]
};
/** Curves that say what is estimated; the rest are parts, readings and marks. */
const CURVES = ['estimate', 'at least'];
const LABEL_px = 19;
/** Half the width of a letter: labels are placed by their middle. */
const LETTER_px = 3.2;

/** Days whose band is estimated. */
export function bandDays(days: readonly ForecastDay[]): BandDay[] {
	const regions = regionsOf(days);
	return days.flatMap(({ on, total_m: { p05, p95 } }, index) =>
		p05 === null || p95 === null
			? []
			: [{ on, p05_m: rounded(p05), p95_m: rounded(p95), region: regions[index] ?? 'unknown' }]
	);
}

/** The thickness chart with the band from 5 to 95 %, and with where each kind of weather begins. */
export function withBand(chart: AnyChart, band: Band, palette: Palette): AnyChart {
	const { data, options } = chart;
	const dash = dashes(band.days);
	const datasets = data.datasets.map((set) =>
		CURVES.includes(set.label ?? '') ? { ...set, segment: { borderDash: dash } } : set
	);
	const plugins = options?.plugins;
	const annotations = {
		...plugins?.annotation?.annotations,
		...borderLines(band, palette)
	};
	return {
		...chart,
		data: { ...data, datasets: [...datasets, ...bandSets(band, palette)] as typeof datasets },
		options: {
			...options,
			plugins: { ...plugins, annotation: { ...plugins?.annotation, annotations } }
		}
	} as AnyChart;
}

function bandSets({ days, units }: Band, palette: Palette) {
	const edge = { borderColor: washed(palette.deep, 0.6), borderWidth: 1 };
	const look = { ...edge, pointRadius: 0, pointHitRadius: 0, order: 2.5 };
	const unit = lengthUnit(units);
	const number = (metres: number) => thicknessNumber(metres, units);
	const upper = days.map(({ on, p05_m, p95_m }) => ({
		x: on,
		y: lengthValue(p95_m, units),
		says: `nine holes in ten: ${number(p05_m)} to ${number(p95_m)} ${unit}`
	}));
	const lower = days.map(({ on, p05_m }) => ({ x: on, y: lengthValue(p05_m, units), says: '' }));
	return [
		{ ...look, label: '5 %', data: lower },
		{ ...look, label: '95 %', data: upper, fill: '-1', backgroundColor: washed(palette.deep, 0.17) }
	];
}

/** A segment is drawn as what its later day goes by. */
function dashes(days: readonly BandDay[]) {
	const regionOn = new Map(days.map(({ on, region }) => [Date.parse(on), region]));
	return ({ p1 }: { p1: { parsed?: { x: number | null } } }) => {
		const x = p1.parsed?.x ?? null;
		return x === null ? undefined : DASHES[regionOn.get(dayOf(x)) ?? 'observed'];
	};
}

/** The chart's axis counts in the reader's own time zone. */
function dayOf(localMs: number): number {
	const local = new Date(localMs);
	return Date.UTC(local.getFullYear(), local.getMonth(), local.getDate());
}

/** Today has its line already. Each label stands under the one before, on the roomier side. */
function borderLines({ borders, days }: Band, palette: Palette) {
	const named = borders.filter(({ kind }) => kind !== 'today');
	return Object.fromEntries(
		named.map((border, index) => {
			const isEarly = days.filter(({ on }) => on < border.on).length < days.length / 2;
			return [`border ${border.kind}`, borderLine(border, index, isEarly, palette)];
		})
	);
}

function borderLine({ on, text }: Border, index: number, isEarly: boolean, palette: Palette) {
	const aside_px = text.length * LETTER_px + 6;
	return {
		type: 'line',
		xMin: on,
		xMax: on,
		borderColor: palette.ink,
		borderWidth: 1.5,
		borderDash: [1, 4],
		label: {
			display: true,
			content: text,
			position: 'end',
			color: palette.ink,
			backgroundColor: palette.sheet,
			font: { family: palette.font, size: 13, weight: 'normal' },
			padding: { x: 4, y: 1 },
			xAdjust: isEarly ? aside_px : -aside_px,
			yAdjust: (index + 1) * LABEL_px,
			z: 1
		}
	} satisfies AnnotationOptions;
}

function washed(colour: string, strength: number): string {
	return colour.replace(/^rgb\((.*)\)$/, `rgba($1, ${strength})`);
}

function rounded(metres: number): number {
	return Math.round(metres * 1e4) / 1e4;
}
