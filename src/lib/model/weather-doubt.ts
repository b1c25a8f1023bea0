import { meanAir_degC } from './degree-days.ts';
import type { DayValues, WeatherHour } from './hours-to-days.ts';
import { celsius } from './units.ts';

/** What one record may be, measured against another of the same place. Thresholds are our choice. */
export type UnitDoubt =
	/** The figures are degrees Fahrenheit, taken for Celsius; or those of the other are. */
	| { kind: 'fahrenheit' | 'otherFahrenheit' | 'tenths'; bias_K: number }
	/** Warmer or colder all along, and no unit explains it. */
	| { kind: 'offset'; bias_K: number }
	/** Amounts are so many times those of the other. */
	| { kind: 'amounts'; factor: number };

const FEWEST_DAYS = 5;
/** Neighbours in the same air differ by less in their means. Our choice. */
export const LARGE_K = 4;
const WELL_EXPLAINED_K = 3; // what a right unit leaves; our choice
const LEAST_FALL_kg_m2 = 10; // less cannot tell a unit from a shower; our choice

/** How a record's daily temperatures lie to another's; `null` with fewer than five days in common. */
export function compareDays(
	ours: readonly DayValues[],
	theirs: readonly DayValues[]
): { days: number; bias_K: number; spread_K: number } | null {
	const pairs = airPairs(ours, theirs);
	if (pairs.length < FEWEST_DAYS) return null;
	const differences = pairs.map(([own, other]) => own - other);
	return { days: pairs.length, bias_K: mean(differences), spread_K: spread(differences) };
}

/** What the temperatures or the amounts of a record are suspected of; `null` for nothing. */
export function unitDoubt(
	ours: readonly DayValues[],
	theirs: readonly DayValues[]
): UnitDoubt | null {
	return airDoubt(airPairs(ours, theirs)) ?? amountDoubt(ours, theirs);
}

type Pair = readonly [own: number, other: number];

function airDoubt(pairs: readonly Pair[]): UnitDoubt | null {
	if (pairs.length < FEWEST_DAYS) return null;
	const bias_K = mean(pairs.map(([own, other]) => own - other));
	const asItIs_K = rms(pairs.map(([own, other]) => own - other));
	if (asItIs_K < LARGE_K) return null;
	const explained = [
		{ kind: 'fahrenheit' as const, left_K: rms(pairs.map(([o, t]) => celsius(o) - t)) },
		{ kind: 'otherFahrenheit' as const, left_K: rms(pairs.map(([o, t]) => o - celsius(t))) },
		{ kind: 'tenths' as const, left_K: rms(pairs.map(([o, t]) => o / 10 - t)) }
	].toSorted((a, b) => a.left_K - b.left_K)[0];
	if (explained && explained.left_K < Math.min(WELL_EXPLAINED_K, asItIs_K / 2)) {
		return { kind: explained.kind, bias_K };
	}
	return Math.abs(bias_K) > LARGE_K ? { kind: 'offset', bias_K } : null;
}

/** Inches or tenths of millimetres taken for millimetres, and the other way round. */
const FACTORS = [25.4, 1 / 25.4, 10, 1 / 10];

function amountDoubt(ours: readonly DayValues[], theirs: readonly DayValues[]): UnitDoubt | null {
	const other = new Map(theirs.map((day) => [day.on, day.precipitation_kg_m2]));
	let [own_kg_m2, other_kg_m2, days] = [0, 0, 0];
	for (const { on, precipitation_kg_m2 } of ours) {
		const amount = other.get(on) ?? null;
		if (precipitation_kg_m2 === null || amount === null) continue;
		own_kg_m2 += precipitation_kg_m2;
		other_kg_m2 += amount;
		days++;
	}
	if (days < FEWEST_DAYS || Math.max(own_kg_m2, other_kg_m2) < LEAST_FALL_kg_m2) return null;
	if (own_kg_m2 <= 0 || other_kg_m2 <= 0) return null;
	const ratio = own_kg_m2 / other_kg_m2;
	const factor = FACTORS.find((each) => Math.abs(Math.log(ratio / each)) < Math.log(1.4));
	return factor === undefined ? null : { kind: 'amounts', factor: ratio };
}

const FEWEST_HOURS = 72;
const LONGEST_SHIFT_h = 13;
const CLEARLY_BETTER = 0.6; // of the spread of differences that a shift must leave; our choice
const LEAST_SPREAD_K = 1; // records that agree better than this have nothing to gain; our choice

/**
 * Hours by which a record's clock runs ahead of another's, negative behind; `null` for none.
 *
 *   k = argmin sd(T_ours(t + k) - T_theirs(t)),  |k| ≤ 13 h
 *
 * A steady difference does not count. Told only from three days in common on, and only when the
 * shift leaves less than 0.6 of the spread.
 */
export function clockDoubt_h(
	ours: readonly WeatherHour[],
	theirs: readonly WeatherHour[]
): number | null {
	const own = airByHour(ours);
	const other = airByHour(theirs);
	const asItIs = spreadAt(own, other, 0);
	if (asItIs === null || asItIs < LEAST_SPREAD_K) return null;
	let best = { shift_h: 0, spread_K: asItIs };
	for (let shift_h = -LONGEST_SHIFT_h; shift_h <= LONGEST_SHIFT_h; shift_h++) {
		const spread_K = spreadAt(own, other, shift_h);
		if (spread_K !== null && spread_K < best.spread_K) best = { shift_h, spread_K };
	}
	return best.shift_h !== 0 && best.spread_K < CLEARLY_BETTER * asItIs ? best.shift_h : null;
}

function spreadAt(
	own: ReadonlyMap<number, number>,
	other: ReadonlyMap<number, number>,
	shift_h: number
): number | null {
	const differences: number[] = [];
	for (const [hour, air_degC] of other) {
		const shifted_degC = own.get(hour + shift_h);
		if (shifted_degC !== undefined) differences.push(shifted_degC - air_degC);
	}
	return differences.length < FEWEST_HOURS ? null : spread(differences);
}

function airByHour(hours: readonly WeatherHour[]): Map<number, number> {
	return new Map(
		hours.flatMap(({ at_s, air_degC }) =>
			air_degC === null ? [] : [[Math.floor(at_s / 3600), air_degC] as const]
		)
	);
}

function airPairs(ours: readonly DayValues[], theirs: readonly DayValues[]): Pair[] {
	const other = new Map(theirs.map((day) => [day.on, meanAir_degC(day)]));
	return ours.flatMap((day): Pair[] => {
		const [own, known] = [meanAir_degC(day), other.get(day.on) ?? null];
		return own === null || known === null ? [] : [[own, known]];
	});
}

function mean(values: readonly number[]): number {
	return values.reduce((total, value) => total + value, 0) / values.length;
}

function rms(values: readonly number[]): number {
	return Math.sqrt(mean(values.map((value) => value ** 2)));
}

function spread(values: readonly number[]): number {
	const middle = mean(values);
	return rms(values.map((value) => value - middle));
}
