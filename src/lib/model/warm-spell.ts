import type { IsoDate } from './calendar.ts';
import { total_m } from './column.ts';
import { isSoundCore } from './hole.ts';
import type { Reading } from './reading.ts';
import { calm, isOver, isRefrozen, type WarmDay } from './warm-day.ts';
import { hasIce, warmthOf, type SpellDay } from './warmth.ts';
import type { DaySource } from './weather.ts';

/** Clear-sky sunshine, mean of the day, that rots ice from within. Our rule, derived. */
export const ROTTING_SUN_W_m2 = 150;
/** Snow that keeps that sun off. Our rule, derived. */
export const SHADING_SNOW_m = 0.03;

const DAY_h = 24;
/** Thinner ice than this is a skim that a thaw may take away whole. Our choice. */
const SHEET_m = 0.05;

/**
 * The warm-spell rules, day by day: six hours above freezing double the requirement, 24 hours or a
 * daily mean above freezing withhold the status.
 *
 * Judged on each day by that day's own hours and the day's before. A spell of either kind ends after
 * 72 hours below freezing with 15 °C·d of frost and a hole drilled since the last warm hour; where sun
 * has been on bare ice since it began, that hole's core must be logged as sound. Days without a
 * temperature count neither as warm nor as frost, and frost that was only forecast ends nothing. Open
 * water ends it only while there has been no more than a skim of ice: later on the estimate of none may
 * be wrong.
 *
 * `hasHours` tells the days built from hourly records: on them the hours decide and not the mean.
 */
export function warmSpells(
	days: readonly RecordedDay[],
	readings: readonly Reading[],
	hasHours: (on: IsoDate) => boolean
): WarmDay[] {
	const result: WarmDay[] = [];
	let past = calm('');
	let before: SpellDay | undefined;
	for (const day of days.map(asSeen)) {
		past = nextWarmDay(past, before, day, readings, hasHours);
		result.push(past);
		before = day;
	}
	return result;
}

export interface RecordedDay extends SpellDay {
	source: DaySource;
}

/** Until a day is in, that it had no warm hour is not known. */
function asSeen(day: RecordedDay): RecordedDay {
	const isFrostAhead = day.source === 'forecast' && day.aboveFreezing_h === 0;
	return isFrostAhead ? { ...day, aboveFreezing_h: null } : day;
}

/** Where a spell stands on a day, from where it stood on the one before. */
export function nextWarmDay(
	past: WarmDay,
	before: SpellDay | undefined,
	day: SpellDay,
	readings: readonly Reading[],
	hasHours: (on: IsoDate) => boolean
): WarmDay {
	if (isSkim(past, day)) return { ...calm(day.on), thickest_m: past.thickest_m };
	const today = readings.filter((reading) => reading.on === day.on);
	let next = withCore(
		withFrost({ ...past, on: day.on, thickest_m: thickest_m(past, day) }, before),
		today
	);
	next = withSun(next, day);
	if (isOver(next, readings)) next = { ...calm(day.on), thickest_m: next.thickest_m };
	return withSun(withWarmth(next, before, day, hasHours), day);
}

/** Also of the day whose hole may end it: bare ice that it finds was bare before. */
function withSun(state: WarmDay, day: SpellDay): WarmDay {
	if (state.state === 'none' || !isSunOnBareIce(day)) return state;
	return { ...state, hadSunOnBareIce: true };
}

/** Open water early in the winter: what thaws before there is a sheet does not weaken one. */
function isSkim(state: WarmDay, day: SpellDay): boolean {
	return !hasIce(day) && state.thickest_m < SHEET_m;
}

function thickest_m(state: WarmDay, day: SpellDay): number {
	return Math.max(state.thickest_m, total_m(day.column));
}

/** Counts the day that has just passed as frost, or breaks the count. */
function withFrost(state: WarmDay, passed: SpellDay | undefined): WarmDay {
	if (passed?.aboveFreezing_h !== 0) return { ...state, frost_h: 0, frost_degCd: 0 };
	return {
		...state,
		frost_h: state.frost_h + DAY_h,
		frost_degCd: state.frost_degCd + passed.freezing_degCd
	};
}

/**
 * A wet or candled core withholds the status whatever the weather; a sound one lifts that, unless
 * somebody else told it or the ice broke there.
 */
function withCore(state: WarmDay, today: readonly Reading[]): WarmDay {
	if (today.some((reading) => reading.core === 'wet' || reading.core === 'candled'))
		return { ...state, state: 'withheld', since: state.since ?? state.on, badCoreOn: state.on };
	if (today.some(isSoundCore)) return { ...state, badCoreOn: null };
	return state;
}

/** Begins or deepens a spell, and notes the last warm day of one that goes on. */
function withWarmth(
	state: WarmDay,
	before: SpellDay | undefined,
	day: SpellDay,
	hasHours: (on: IsoDate) => boolean
): WarmDay {
	const days = [before, day]
		.filter((each) => each !== undefined)
		.filter((each) => !isSkim(state, each));
	const level = warmthOf(days, hasHours);
	if (level === 'none' && state.state === 'none') return state;
	const warm = days.filter((each) => (each.aboveFreezing_h ?? 0) > 0);
	const isNew = state.since === null || (isRefrozen(state) && warm.length > 0);
	const isWarmToday = warm.at(-1) === day;
	return {
		...state,
		state: level === 'withheld' || state.state === 'withheld' ? 'withheld' : 'doubled',
		since: isNew ? (warm[0]?.on ?? day.on) : state.since,
		lastWarmOn: warm.at(-1)?.on ?? state.lastWarmOn,
		frost_h: isWarmToday ? 0 : state.frost_h,
		frost_degCd: isWarmToday ? 0 : state.frost_degCd
	};
}

function isSunOnBareIce(day: SpellDay): boolean {
	return day.sun_W_m2 > ROTTING_SUN_W_m2 && day.column.snow_m < SHADING_SNOW_m;
}
