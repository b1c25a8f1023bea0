import { addDays } from '#lib/model/calendar.ts';
import { dayFromHours, type DaySpan, type WeatherHour } from '#lib/model/hours-to-days.ts';
import type { Context } from '../context.ts';
import { commitRebuiltDays, readRevision } from '../storage/weather-commit.ts';
import { readHourSpan, readWeatherHours } from '../storage/weather-days.ts';
import {
	dropStaged,
	dropStagedDays,
	readStagedHours,
	readStagedHourSpan,
	stageDays
} from '../storage/weather-staging.ts';
import { newId } from './ids.ts';
import { daySpan, localDay } from './local-day.ts';
import { nextTurn } from './next-turn.ts';

type Db = Context['db'];

interface HourlyImport {
	lakeId: string;
	importId: string;
	timeZone: string;
}

/** Days are built this many at a time: one read of at most 2,500 hours. */
const DAYS_AT_A_TIME = 100;

/** Builds the days that staged hours touch, from these and the stored hours, and stages them. */
export async function stageDaysOfHours(db: Db, hourly: HourlyImport): Promise<void> {
	const { lakeId, importId, timeZone } = hourly;
	await dropStagedDays(db, importId, 'hourly');
	const span = await readStagedHourSpan(db, importId);
	for (const days of span ? stretches(span, timeZone) : []) {
		const [from_s, to_s] = ends(days);
		const staged = await readStagedHours(db, importId, from_s, to_s);
		if (staged.length === 0) continue;
		const stored = await readWeatherHours(db, lakeId, from_s, to_s);
		const merged = byDay(days, mergeHours(stored, staged));
		const touched = new Set(byDay(days, staged).map(({ day }) => day.on));
		const built = merged
			.filter(({ day }) => touched.has(day.on))
			.map(({ day, hours }) => dayFromHours(day, hours));
		await stageDays(db, importId, 'hourly', built);
		await nextTurn();
	}
}

/** Gives the lake another time zone and builds its days from its hours again, in one step. */
export async function changeTimeZone(
	{ db }: Context,
	lakeId: string,
	timeZone: string
): Promise<void> {
	const importId = newId('rebuild');
	try {
		for (;;) {
			const revision = await readRevision(db, lakeId);
			await dropStaged(db, importId);
			const span = await readHourSpan(db, lakeId);
			for (const days of span ? stretches(span, timeZone) : []) {
				const hours = byDay(days, await readWeatherHours(db, lakeId, ...ends(days)));
				const built = hours.map(({ day, hours: ofDay }) => dayFromHours(day, ofDay));
				await stageDays(db, importId, 'hourly', built);
				await nextTurn();
			}
			if (await commitRebuiltDays(db, { lakeId, importId, revision, timeZone })) return;
		}
	} finally {
		await dropStaged(db, importId);
	}
}

/** Parts of the calendar, from the day of the first hour to the day of the last. */
function* stretches([first_s, last_s]: [number, number], timeZone: string): Generator<DaySpan[]> {
	const last = localDay(new Date(last_s * 1000), timeZone);
	let start = localDay(new Date(first_s * 1000), timeZone);
	while (start <= last) {
		const first = start;
		yield Array.from({ length: DAYS_AT_A_TIME }, (_, index) =>
			daySpan(addDays(first, index), timeZone)
		);
		start = addDays(start, DAYS_AT_A_TIME);
	}
}

function ends(days: readonly DaySpan[]): [from_s: number, to_s: number] {
	return [days.at(0)?.start_s ?? 0, days.at(-1)?.end_s ?? 0];
}

/** The staged hour's values where it has them, else the stored ones. */
function mergeHours(stored: readonly WeatherHour[], staged: readonly WeatherHour[]): WeatherHour[] {
	const merged = new Map(stored.map((hour) => [hour.at_s, hour]));
	for (const hour of staged) {
		const before = merged.get(hour.at_s);
		merged.set(hour.at_s, {
			at_s: hour.at_s,
			air_degC: hour.air_degC ?? before?.air_degC ?? null,
			precipitation_kg_m2: hour.precipitation_kg_m2 ?? before?.precipitation_kg_m2 ?? null,
			snowfall_kg_m2: hour.snowfall_kg_m2 ?? before?.snowfall_kg_m2 ?? null,
			landSnow_m: hour.landSnow_m ?? before?.landSnow_m ?? null,
			wind_m_s: hour.wind_m_s ?? before?.wind_m_s ?? null
		});
	}
	return [...merged.values()].toSorted((a, b) => a.at_s - b.at_s);
}

/** The days that have hours, each with its own; both lists are sorted and days follow each other. */
function byDay(
	days: readonly DaySpan[],
	hours: readonly WeatherHour[]
): { day: DaySpan; hours: WeatherHour[] }[] {
	let next = 0;
	return days.flatMap((day) => {
		const first = next;
		while ((hours[next]?.at_s ?? Infinity) < day.end_s) next++;
		return next > first ? [{ day, hours: hours.slice(first, next) }] : [];
	});
}
