import { daysBetween } from './calendar.ts';
import { meanAir_degC } from './degree-days.ts';
import type { DayValues } from './hours-to-days.ts';
import { UNKNOWN_AIR } from './weather.ts';

/**
 * So much colder than the air on both sides of it no weather is for some hours, or for one day. The
 * fastest change on record, at the foot of mountains, is a burst of warmth into cold that had lasted:
 * 27 K up within minutes and 32 K down again two hours later [MWR1943]. Guidance flags 5 K from one
 * hour to the next [EPA2000]. Cold that stays, however fast it came, is on one side only. Our choice.
 */
export const SPIKE_K = 30;

/** The air on both sides is looked for so near: as far as the longest step of hourly values. Our choice. */
const NEAR_h = 6;
/** Where a record begins or ends there is one side alone, which has to be nearer. Our choice. */
const NEAR_END_h = 3;
/** By so much at the beginning or end of daily values. Our choice: no day's mean follows another so. */
const END_SPIKE_K = 40;

interface Value {
	/** In the unit of the steps. */
	at: number;
	air_degC: number;
}

interface Rule {
	near: number;
	nearEnd: number;
	endSpike_K: number;
}

const HOURS: Rule = { near: NEAR_h, nearEnd: NEAR_END_h, endSpike_K: SPIKE_K };
const DAYS: Rule = { near: 1, nearEnd: 1, endSpike_K: END_SPIKE_K };

/** Indices of the hours that are colder, or else warmer, than any weather is beside the others. Sorted. */
export function spikedHours(
	hours: readonly { at_s: number; air_degC: number | null }[],
	side: 'colder' | 'warmer'
): number[] {
	const values = hours.map(({ at_s, air_degC }) => ({ at: at_s / 3600, air_degC }));
	return spiked(values, side, HOURS);
}

/** The same of days, by their means. */
export function spikedDays(
	days: readonly (Pick<DayValues, 'on'> & Mean)[],
	side: 'colder' | 'warmer'
): number[] {
	const [first] = days;
	if (!first) return [];
	const values = days.map((day) => ({
		at: daysBetween(first.on, day.on),
		air_degC: meanAir_degC(day)
	}));
	return spiked(values, side, DAYS);
}

type Mean = Pick<DayValues, 'air_degC' | 'min_degC' | 'max_degC'>;

/** The days, with no temperature where the mean is colder than any weather. Sorted. */
export function withoutColdDays(days: readonly DayValues[]): readonly DayValues[] {
	const cold = new Set(spikedDays(days, 'colder'));
	if (cold.size === 0) return days;
	return days.map((day, index) => (cold.has(index) ? { ...day, ...UNKNOWN_AIR } : day));
}

/** The hours, with no temperature where it is colder than any weather; warmth stays, for caution. Sorted. */
export function withoutColdSpikes<Hour extends { at_s: number; air_degC: number | null }>(
	hours: readonly Hour[]
): readonly Hour[] {
	const cold = new Set(spikedHours(hours, 'colder'));
	if (cold.size === 0) return hours;
	return hours.map((hour, index) => (cold.has(index) ? { ...hour, air_degC: null } : hour));
}

/** One that is found is unknown to those beside it, which may then be at an end themselves. */
function spiked(
	values: readonly { at: number; air_degC: number | null }[],
	side: 'colder' | 'warmer',
	rule: Rule
): number[] {
	const sign = side === 'colder' ? 1 : -1;
	let left = values.flatMap(({ at, air_degC }, index) =>
		air_degC === null ? [] : [{ at, air_degC: sign * air_degC, index }]
	);
	if (range_K(left) <= SPIKE_K) return [];
	const found: number[] = [];
	for (;;) {
		const isSpike = left.map((_, place) => isSpiked(left, place, rule));
		if (!isSpike.includes(true)) return found.toSorted((a, b) => a - b);
		found.push(...left.filter((_, place) => isSpike[place]).map(({ index }) => index));
		left = left.filter((_, place) => !isSpike[place]);
	}
}

function isSpiked(values: readonly Value[], place: number, rule: Rule): boolean {
	const before_K = fallFrom_K(values, place, -1, rule.near);
	const after_K = fallFrom_K(values, place, 1, rule.near);
	if (before_K !== null && after_K !== null) return Math.min(before_K, after_K) > SPIKE_K;
	const step = before_K === null ? 1 : -1;
	return (fallFrom_K(values, place, step, rule.nearEnd) ?? 0) > rule.endSpike_K;
}

/** Below the warmest on one side and near; `null` where nothing is known there. */
function fallFrom_K(
	values: readonly Value[],
	place: number,
	step: 1 | -1,
	near: number
): number | null {
	const here = values[place];
	if (!here) return null;
	let warmest_degC: number | null = null;
	for (let other = place + step; ; other += step) {
		const beside = values[other];
		if (!beside || Math.abs(beside.at - here.at) > near) break;
		warmest_degC = Math.max(warmest_degC ?? -Infinity, beside.air_degC);
	}
	return warmest_degC === null ? null : warmest_degC - here.air_degC;
}

function range_K(values: readonly Value[]): number {
	let [least, most] = [Infinity, -Infinity];
	for (const { air_degC } of values) {
		least = Math.min(least, air_degC);
		most = Math.max(most, air_degC);
	}
	return most - least;
}
