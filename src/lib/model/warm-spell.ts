import type { IsoDate } from './calendar.ts';
import { isDrilled } from './hole.ts';
import type { Reading } from './reading.ts';
import type { SeasonDay } from './season.ts';
import { hasIce, warmthOf, type WarmState } from './warmth.ts';

/** Hours wholly below freezing that a spell needs to end. Our rule, derived and cautious. */
export const REFREEZING_h = 72;
/** Frost that must come with them. Our rule, derived and cautious. */
export const REFREEZING_degCd = 15;
/** Clear-sky sunshine, mean of the day, that rots ice from within. Our rule, derived. */
export const ROTTING_SUN_W_m2 = 150;
/** Snow that keeps that sun off. Our rule, derived. */
export const SHADING_SNOW_m = 0.03;

const DAY_h = 24;

/** Where a warm spell stands on one day. */
export interface WarmDay {
	on: IsoDate;
	state: WarmState;
	/** First day of the spell, or of the wet or candled core that withholds. */
	since: IsoDate | null;
	/** Last day with warm hours. A hole has to be newer. */
	lastWarmOn: IsoDate | null;
	/** A core logged as wet or candled that no sound one has followed. */
	badCoreOn: IsoDate | null;
	/** Sun has been on bare ice since the spell began: only a sound core ends it. */
	hadSunOnBareIce: boolean;
	/** Frost without a break since the last warm hour. */
	frost_h: number;
	frost_degCd: number;
}

/**
 * The warm-spell rules, day by day: six hours above freezing double the requirement, 24 hours or a
 * daily mean above freezing withhold the status.
 *
 * Judged on each day by that day's own hours and the day's before. A spell of either kind ends after
 * 72 hours below freezing with 15 °C·d of frost and a hole drilled since the last warm hour; where sun
 * has been on bare ice since it began, that hole's core must be logged as sound. Days without a
 * temperature count neither as warm nor as frost. Open water ends it: what freezes later is new.
 *
 * `hasHours` tells the days built from hourly records: on them the hours decide and not the mean.
 */
export function warmSpells(
	days: readonly SeasonDay[],
	readings: readonly Reading[],
	hasHours: (on: IsoDate) => boolean
): WarmDay[] {
	const result: WarmDay[] = [];
	let past = calm('');
	let before: SeasonDay | undefined;
	for (const day of days) {
		past = step(past, before, day, readings, hasHours);
		result.push(past);
		before = day;
	}
	return result;
}

function step(
	past: WarmDay,
	before: SeasonDay | undefined,
	day: SeasonDay,
	readings: readonly Reading[],
	hasHours: (on: IsoDate) => boolean
): WarmDay {
	if (!hasIce(day)) return calm(day.on);
	const today = readings.filter((reading) => reading.on === day.on);
	let next = withCore(withFrost({ ...past, on: day.on }, before), today);
	if (isOver(next, readings)) next = calm(day.on);
	next = withWarmth(next, before, day, hasHours);
	if (next.state !== 'none' && isSunOnBareIce(day)) next = { ...next, hadSunOnBareIce: true };
	return next;
}

function calm(on: IsoDate): WarmDay {
	return {
		on,
		state: 'none',
		since: null,
		lastWarmOn: null,
		badCoreOn: null,
		hadSunOnBareIce: false,
		frost_h: 0,
		frost_degCd: 0
	};
}

/** Counts the day that has just passed as frost, or breaks the count. */
function withFrost(state: WarmDay, passed: SeasonDay | undefined): WarmDay {
	if (passed?.aboveFreezing_h !== 0) return { ...state, frost_h: 0, frost_degCd: 0 };
	return {
		...state,
		frost_h: state.frost_h + DAY_h,
		frost_degCd: state.frost_degCd + passed.freezing_degCd
	};
}

/** A wet or candled core withholds the status whatever the weather; a sound one lifts that. */
function withCore(state: WarmDay, today: readonly Reading[]): WarmDay {
	if (today.some((reading) => reading.core === 'wet' || reading.core === 'candled'))
		return { ...state, state: 'withheld', since: state.since ?? state.on, badCoreOn: state.on };
	if (today.some((reading) => reading.core === 'sound')) return { ...state, badCoreOn: null };
	return state;
}

/** Begins or deepens a spell, and notes the last warm day of one that goes on. */
function withWarmth(
	state: WarmDay,
	before: SeasonDay | undefined,
	day: SeasonDay,
	hasHours: (on: IsoDate) => boolean
): WarmDay {
	const days = [before, day].filter((each) => each !== undefined).filter(hasIce);
	const level = warmthOf(days, hasHours);
	if (level === 'none' && state.state === 'none') return state;
	const warm = days.filter((each) => (each.aboveFreezing_h ?? 0) > 0);
	return {
		...state,
		state: level === 'withheld' || state.state === 'withheld' ? 'withheld' : 'doubled',
		since: state.since ?? warm[0]?.on ?? day.on,
		lastWarmOn: warm.at(-1)?.on ?? state.lastWarmOn
	};
}

function isOver(state: WarmDay, readings: readonly Reading[]): boolean {
	if (state.state === 'none' || state.badCoreOn !== null) return false;
	if (state.lastWarmOn === null) return true;
	const lastWarmOn = state.lastWarmOn;
	const isRefrozen = state.frost_h >= REFREEZING_h && state.frost_degCd >= REFREEZING_degCd;
	return isRefrozen && readings.some((reading) => ends(reading, state, lastWarmOn));
}

function ends(reading: Reading, state: WarmDay, lastWarmOn: IsoDate): boolean {
	const isNew = reading.on > lastWarmOn && reading.on <= state.on;
	const isGood = reading.core === 'sound' || (reading.core === null && !state.hadSunOnBareIce);
	return isNew && isGood && isDrilled(reading);
}

function isSunOnBareIce(day: SeasonDay): boolean {
	return day.sun_W_m2 > ROTTING_SUN_W_m2 && day.column.snow_m < SHADING_SNOW_m;
}
