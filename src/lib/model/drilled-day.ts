import { afterDrilling, type AfterDrilling } from './after-drilling.ts';
import { effective_m } from './bearing.ts';
import { daysBetween, type IsoDate } from './calendar.ts';
import { total_m } from './column.ts';
import { holeEffective_m, isDrilled, thicknessHoles } from './hole.ts';
import { hasBrokenSince } from './open-part.ts';
import { placeKind, type PlaceKind } from './place-kind.ts';
import type { Reading } from './reading.ts';
import type { Since } from './since/since.ts';
import type { SeasonDay } from './season.ts';
import { sinceAnchor } from './since-anchor.ts';
import type { WarmDay } from './warm-day.ts';

/** A hole with its effective thickness as it would be by now. */
export interface CarriedHole {
	effective_m: number;
	kind: PlaceKind;
	/** Told by somebody else: it can speak against a status, not for one. */
	secondHand: boolean;
}

/** The holes of one day, carried forward to a later one. */
export interface DrilledDay extends AfterDrilling {
	on: IsoDate;
	age_d: number;
	holes: CarriedHole[];
	/** Days without a temperature since. */
	gapDays: number;
}

export interface DrilledDayInput {
	asOf: IsoDate;
	readings: readonly Reading[];
	/** Readings set aside as not to be believed. */
	doubtful: ReadonlySet<string>;
	warm: readonly WarmDay[];
	/** What was seen after `asOf`; `null` for a view of the past. */
	since: Since | null;
	/** Older days than this are left out, but for the latest. */
	lookBack_d: number;
	/** The season as the readings to this day, inclusive, tell it. */
	seasonBy: (on: IsoDate) => readonly SeasonDay[];
}

/**
 * The days on which holes were drilled, the latest first, each carried forward to `asOf`.
 *
 * A hole gains or loses what the site's column is estimated to have gained or lost since. Readings
 * that are doubted are left out, those of a place where the ice has broken that day or later, and those
 * of ice that has gone since. Their age is that of today, and days that nobody observed count once its
 * weather is old.
 */
export function drilledDays(input: DrilledDayInput): DrilledDay[] {
	const counted = input.readings.filter((reading) => isCounted(reading, input));
	const days = [...new Set(counted.map((reading) => reading.on))].toSorted().toReversed();
	const recent = days.filter(
		(on, index) => index === 0 || daysBetween(on, input.asOf) <= input.lookBack_d
	);
	return recent.flatMap((on) => {
		const readings = counted.filter((reading) => reading.on === on);
		return carry(on, readings, input) ?? [];
	});
}

function isCounted(reading: Reading, input: DrilledDayInput): boolean {
	if (reading.on > input.asOf || !isDrilled(reading)) return false;
	if (input.doubtful.has(reading.id)) return false;
	const known = [...input.readings, ...(input.since?.readings ?? [])];
	return !hasBrokenSince(reading, known, nowOf(input));
}

function nowOf({ asOf, since }: DrilledDayInput): IsoDate {
	return since?.now ?? asOf;
}

/**
 * Whole days since a hole of which nothing was observed, once the weather is old: those after `asOf`,
 * and those before it that were only forecast.
 */
function unseenDays(
	drilledOn: IsoDate,
	season: readonly SeasonDay[],
	{ asOf, since }: DrilledDayInput
): number {
	const after = since?.isWeatherOld ? Math.max(0, daysBetween(asOf, since.now) - 1) : 0;
	const forecast = season.filter(
		({ on, source }) => source === 'forecast' && on >= drilledOn && on < asOf
	);
	return after + Math.max(0, forecast.length - 1);
}

function carry(
	on: IsoDate,
	readings: readonly Reading[],
	input: DrilledDayInput
): DrilledDay | null {
	const season = input.seasonBy(on);
	const then = season.find((day) => day.on === on);
	const { asOf } = input;
	const nowAt = season.findIndex((day) => day.on === asOf);
	const now = season[nowAt];
	if (!then || !now || season.some((day) => day.on >= on && day.on <= asOf && isOpen(day)))
		return null;
	return {
		on,
		age_d: daysBetween(on, nowOf(input)),
		holes: readings.flatMap((reading) => carriedHoles(reading, then, now)),
		...afterDrilling(on, season, input),
		gapDays:
			(sinceAnchor(season, input.readings)[nowAt]?.gapDays ?? 0) + unseenDays(on, season, input)
	};
}

function isOpen({ column }: SeasonDay): boolean {
	return total_m(column) <= 0;
}

function carriedHoles(reading: Reading, then: SeasonDay, now: SeasonDay): CarriedHole[] {
	const change_m = effective_m(now.column) - effective_m(then.column);
	return thicknessHoles(reading).flatMap((hole) => {
		const measured_m = holeEffective_m(hole, then.column);
		if (measured_m === null) return [];
		return {
			effective_m: Math.max(0, measured_m + change_m),
			kind: placeKind(reading.place),
			secondHand: reading.secondHand
		};
	});
}
