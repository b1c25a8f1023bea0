import type { WeatherHour } from '#lib/model/hours-to-days.ts';
import type { Fault } from '../contract.ts';

const HOUR_s = 3600;
const S_PER_DAY = 86_400;

/** Whole days that show the time of day by their warmth. Common practice, no source. */
const FEWEST_DAYS = 7;
const FEWEST_HOURS = 22;
const SWING_K = 2;
/** Share of the days' swings that point the same way: weather without a day's rhythm has none. */
const AGREEMENT = 0.7;
/** By the sun. It is warmest two to three hours after noon; further off than this is no weather. */
const WARMEST_h = 14.5;
const MOST_OFF_h = 4.5;

/** A clock that is hours off shows by the warmest time of day, `null` where nothing speaks against it. */
export function clockDoubt(hours: readonly WeatherHour[], longitude: number): Fault | null {
	const rhythm = dailyRhythm(hours, longitude);
	if (!rhythm || rhythm.swing_K < SWING_K || rhythm.agreement < AGREEMENT) return null;
	const off_h = signedHours(rhythm.warmest_h - WARMEST_h);
	if (Math.abs(off_h) <= MOST_OFF_h) return null;
	const at = String(Math.round(rhythm.warmest_h) % 24).padStart(2, '0');
	const text = `It is warmest at about ${at} o’clock by the sun in this answer, so that its clock seems to be ${Math.abs(Math.round(off_h))} hours off: check the time zone of the times, and that the position is that of the lake.`;
	return { code: 'clockDoubt', text };
}

interface Rhythm {
	swing_K: number;
	warmest_h: number;
	/** 1 where all days swing alike, near 0 where each goes its own way. */
	agreement: number;
}

/** The first harmonic of the temperature over the day by the sun, averaged over whole days. */
function dailyRhythm(hours: readonly WeatherHour[], longitude: number): Rhythm | null {
	const days = new Map<number, { hour: number; air_degC: number }[]>();
	for (const { at_s, air_degC } of hours) {
		if (air_degC === null) continue;
		const sun_s = at_s + HOUR_s / 2 + (longitude / 360) * S_PER_DAY;
		const day = Math.floor(sun_s / S_PER_DAY);
		const hour = (sun_s - day * S_PER_DAY) / HOUR_s;
		const before = days.get(day);
		if (before) before.push({ hour, air_degC });
		else days.set(day, [{ hour, air_degC }]);
	}
	const swings = [...days.values()].filter((day) => day.length >= FEWEST_HOURS).map(swingOf);
	if (swings.length < FEWEST_DAYS) return null;
	const x = mean(swings.map((swing) => swing.x));
	const y = mean(swings.map((swing) => swing.y));
	const size = Math.hypot(x, y);
	const sizes = mean(swings.map((swing) => Math.hypot(swing.x, swing.y)));
	const warmest_h = ((Math.atan2(y, x) / (2 * Math.PI)) * 24 + 24) % 24;
	return { swing_K: 2 * size, warmest_h, agreement: sizes === 0 ? 0 : size / sizes };
}

/** The trend from one midnight to the next is taken out: a cold front is no time of day. */
function swingOf(day: readonly { hour: number; air_degC: number }[]): { x: number; y: number } {
	const first = day[0];
	const last = day.at(-1);
	const slope =
		first && last && last.hour > first.hour
			? (last.air_degC - first.air_degC) / (last.hour - first.hour)
			: 0;
	const level = mean(day.map(({ hour, air_degC }) => air_degC - slope * hour));
	const turn = (hour: number) => (hour / 24) * 2 * Math.PI;
	const along = (wave: (angle: number) => number) =>
		2 * mean(day.map(({ hour, air_degC }) => (air_degC - slope * hour - level) * wave(turn(hour))));
	return { x: along(Math.cos), y: along(Math.sin) };
}

function mean(values: readonly number[]): number {
	return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function signedHours(hours: number): number {
	return ((hours + 36) % 24) - 12;
}
