import type { IsoDate } from '#lib/model/calendar.ts';
import { meanAir_degC } from '#lib/model/degree-days.ts';
import { dayFromHours, type DayValues } from '#lib/model/hours-to-days.ts';
import { daySpan, localDay } from '#lib/server/services/local-day.ts';
import type { SourceAnswer } from '#lib/server/services/sources/mapping.ts';

/** A temperature at an instant, for the drawing. */
export interface AirPoint {
	at_s: number;
	air_degC: number;
}

export interface UnderstoodDay {
	on: IsoDate;
	air_degC: number | null;
	/** Of the hours, or as the source tells them. */
	lowest_degC: number | null;
	highest_degC: number | null;
	precipitation_kg_m2: number | null;
	landSnow_m: number | null;
}

/** What was understood of an answer, light enough for a page. */
export interface Understood {
	points: AirPoint[];
	days: UnderstoodDay[];
	/** Now: what lies after it is told of the future. */
	now_s: number;
	timeZone: string;
	step: 'hourly' | 'daily';
}

const MOST_POINTS = 400;
const MOST_DAYS = 60;

/** `null` where no temperature was understood. */
export function understoodOf(
	{ hours, days }: Pick<SourceAnswer, 'hours' | 'days'>,
	{ timeZone, now }: { timeZone: string; now: Date }
): Understood | null {
	const step = hours.length > 0 ? 'hourly' : 'daily';
	const told = step === 'hourly' ? daysOf(hours, timeZone) : days.map(ownDay);
	const points = step === 'hourly' ? hourPoints(hours) : dayPoints(days, timeZone);
	if (points.length === 0) return null;
	const now_s = now.getTime() / 1000;
	return { points: thinned(points), days: told.slice(-MOST_DAYS), now_s, timeZone, step };
}

function hourPoints(hours: SourceAnswer['hours']): AirPoint[] {
	return hours.flatMap(({ at_s, air_degC }) => (air_degC === null ? [] : [{ at_s, air_degC }]));
}

function dayPoints(days: readonly DayValues[], timeZone: string): AirPoint[] {
	return days.flatMap((day) => {
		const air_degC = meanAir_degC(day);
		if (air_degC === null) return [];
		const { start_s, end_s } = daySpan(day.on, timeZone);
		return [{ at_s: (start_s + end_s) / 2, air_degC }];
	});
}

/** Every so many, the first and the last among them. */
function thinned(points: readonly AirPoint[]): AirPoint[] {
	const every = Math.ceil(points.length / MOST_POINTS);
	return points.filter((_, at) => at % every === 0 || at === points.length - 1);
}

function daysOf(hours: SourceAnswer['hours'], timeZone: string): UnderstoodDay[] {
	const byDay = new Map<IsoDate, SourceAnswer['hours']>();
	for (const hour of hours) {
		const on = localDay(new Date(hour.at_s * 1000), timeZone);
		const ofDay = byDay.get(on);
		if (ofDay) ofDay.push(hour);
		else byDay.set(on, [hour]);
	}
	return [...byDay].map(([on, ofDay]) => {
		const airs = hourPoints(ofDay).map(({ air_degC }) => air_degC);
		const { precipitation_kg_m2, landSnow_m } = dayFromHours(daySpan(on, timeZone), ofDay);
		return {
			on,
			air_degC: airs.length > 0 ? airs.reduce((sum, air) => sum + air, 0) / airs.length : null,
			lowest_degC: airs.length > 0 ? Math.min(...airs) : null,
			highest_degC: airs.length > 0 ? Math.max(...airs) : null,
			precipitation_kg_m2,
			landSnow_m
		};
	});
}

function ownDay(day: DayValues): UnderstoodDay {
	const { on, min_degC, max_degC, precipitation_kg_m2, landSnow_m } = day;
	const known = { lowest_degC: min_degC, highest_degC: max_degC, precipitation_kg_m2, landSnow_m };
	return { on, air_degC: meanAir_degC(day), ...known };
}
