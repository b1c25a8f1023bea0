import type { Decimal } from '../../cells/numbers.ts';
import { outsideOf, withoutNoise } from '../../cells/plausible.ts';
import type { ValueRole } from '../../cells/units.ts';
import type { Stamp } from '../schema.ts';
import type { Column } from './columns.ts';
import { piecesOf, type Piece } from './pieces.ts';
import { isRate, valuesOf, type Samples } from './role-values.ts';
import { spreadAmounts, spreadStates, type HourOf, type HourValues } from './spread.ts';
import type { Tally } from './tally.ts';
import type { Timeline } from './timeline.ts';

export interface HourReading {
	timelineOf: (column: Column) => Timeline;
	/** Of the times, where a value has none of its own. */
	stamp: Stamp;
	hourOf: HourOf;
	hourText: (at_s: number) => string;
	decimal: Decimal;
	tally: Tally;
}

/** The hours of one role; a second column fills what the first leaves open. */
export function hoursOfRole(
	columns: readonly Column[],
	reading: HourReading,
	samples: Samples
): HourValues {
	const hours: HourValues = new Map();
	for (const column of columns) {
		for (const [hour_s, value] of hoursOfColumn(column, reading, samples)) {
			if (!hours.has(hour_s)) hours.set(hour_s, value);
		}
	}
	const [first] = columns;
	if (first) countNulls(first, hours, reading);
	return hours;
}

function hoursOfColumn(column: Column, reading: HourReading, samples: Samples): HourValues {
	const { role, spec } = column;
	const timeline = reading.timelineOf(column);
	const stamp = spec.stamp ?? reading.stamp;
	const values = valuesOf(column, timeline.places, reading.decimal, reading.tally, samples);
	const laid = piecesOf(timeline, values, spec, stamp);
	const pieces = isRate(spec.unit) ? laid.map(toAmount) : laid;
	const possible = pieces.flatMap((piece) => physical(role, piece, reading));
	const hours = isAmount(role)
		? spreadAmounts(possible, reading.hourOf)
		: spreadStates(possible, reading.hourOf, stamp === 'instant');
	// Parts that can be may add up to an hour that can't.
	return new Map([...hours].filter(([, value]) => outsideOf(role, value, 'hourly') === null));
}

function toAmount(piece: Piece): Piece {
	return { ...piece, value: (piece.value * piece.length_s) / 3600 };
}

/** The piece as it can be, or none. */
function physical(role: ValueRole, piece: Piece, { tally, hourText }: HourReading): Piece[] {
	const hours = isAmount(role) ? Math.max(1, piece.length_s / 3600) : 1;
	const value = withoutNoise(role, piece.value);
	const range = outsideOf(role, value / hours, 'hourly');
	const isNextPossible = piece.next === null || outsideOf(role, piece.next, 'hourly') === null;
	if (range === null) return [{ ...piece, value, next: isNextPossible ? piece.next : null }];
	tally.add(
		'impossible',
		role,
		`${round(piece.value)}, which is not ${range}`,
		hourText(piece.start_s)
	);
	return [];
}

/** Times without a value between the first and the last that has one. */
function countNulls(column: Column, hours: HourValues, reading: HourReading): void {
	const known = [...hours.keys()];
	const first_s = known.reduce((least, hour_s) => Math.min(least, hour_s), Infinity);
	const last_s = known.reduce((most, hour_s) => Math.max(most, hour_s), -Infinity);
	const { starts_s, places } = reading.timelineOf(column);
	for (const [at, at_s] of starts_s.entries()) {
		const hour_s = reading.hourOf(at_s);
		if (hour_s <= first_s || hour_s >= last_s || hours.has(hour_s)) continue;
		const isEmpty = places[at]?.every((place) => (column.raw[place] ?? null) === null) ?? true;
		if (isEmpty) reading.tally.add('nulls', column.role, 'null', reading.hourText(at_s));
	}
}

export function isAmount(role: ValueRole): boolean {
	return role === 'precipitation' || role === 'snowfall';
}

function round(value: number): number {
	return Math.round(value * 100) / 100;
}
