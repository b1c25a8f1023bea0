import { bandPlace, error_m, type Hindsight, type PredictedReading } from '#lib/model/hindsight.ts';
import type { SeriesTable } from './charts/series-tables.ts';
import { day } from './format/day.ts';
import { depth, depthNumber, lengthUnit, thickness, thicknessNumber } from './format/length.ts';
import { counted, UNKNOWN } from './format/number.ts';
import type { Units } from './units-setting.ts';

/** Fewer say nothing about what is usual. */
const FEW = 3;
/** Less than this on average is neither too thick nor too thin. */
const NO_BIAS_m = 0.005;

const PLACES = {
	inside: 'inside',
	thinner: 'thinner than it',
	thicker: 'thicker than it'
} as const;

/** How far off the tool was, in plain words. @example 'Usually within 4 cm, on average 1 cm too thick.' */
export function hindsightSentence(of: Hindsight | null, units: Units): string {
	if (of === null) return 'No reading had been predicted, so nothing can be said.';
	if (of.count < FEW) {
		return `Only ${counted(of.count, 'reading')} had been predicted: too few to say what is usual.`;
	}
	return [
		`Usually within ${depth(of.usual_m, units)} of what was drilled, ${bias(of.bias_m, units)}.`,
		...(of.banded > 0 ? [bandWords(of)] : [])
	].join(' ');
}

/** Each reading against what had been predicted before it. */
export function hindsightTable(readings: readonly PredictedReading[], units: Units): SeriesTable {
	return {
		columns: [
			'Day',
			'Drilled',
			'Had been predicted',
			'Band, 5 to 95 %',
			'Off by',
			'In the band',
			'Since the last reading'
		],
		rows: readings.map((reading) => ({ id: reading.readingId, cells: cells(reading, units) }))
	};
}

function cells(reading: PredictedReading, units: Units): string[] {
	const { on, predicted, measured_m, daysSince } = reading;
	const { p05, p50, p95 } = predicted;
	const place = bandPlace(reading);
	return [
		day(on),
		thickness(measured_m, units),
		thickness(p50, units),
		p05 === null || p95 === null
			? UNKNOWN
			: `${thicknessNumber(p05, units)} to ${thickness(p95, units)}`,
		offBy(error_m(reading), units),
		place === null ? UNKNOWN : PLACES[place],
		daysSince === null ? 'the first' : counted(daysSince, 'day')
	];
}

function offBy(error: number | null, units: Units): string {
	if (error === null) return UNKNOWN;
	const size = depthNumber(Math.abs(error), units);
	if (size === '0') return 'nothing';
	return `${size} ${lengthUnit(units)} too ${error > 0 ? 'thick' : 'thin'}`;
}

function bias(bias_m: number, units: Units): string {
	if (Math.abs(bias_m) < NO_BIAS_m) return 'on average neither too thick nor too thin';
	return `on average ${depth(Math.abs(bias_m), units)} too ${bias_m > 0 ? 'thick' : 'thin'}`;
}

function bandWords({ inside, banded }: Hindsight): string {
	const were = inside === 1 ? 'was' : 'were';
	return `${inside} of ${counted(banded, 'reading')} ${were} inside the band, where nine in ten should be.`;
}
