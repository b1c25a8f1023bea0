import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import { dayFromHours, type DayValues, type WeatherHour } from '#lib/model/hours-to-days.ts';
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
	for (const [start, end] of span ? stretches(span, timeZone) : []) {
		const [from_s, to_s] = clock(start, end, timeZone);
		const staged = await readStagedHours(db, importId, from_s, to_s);
		if (staged.length === 0) continue;
		const stored = await readWeatherHours(db, lakeId, from_s, to_s);
		const touched = new Set(staged.map(({ at_s }) => localDay(new Date(at_s * 1000), timeZone)));
		const days = buildDays(mergeHours(stored, staged), timeZone);
		await stageDays(
			db,
			importId,
			'hourly',
			days.filter(({ on }) => touched.has(on))
		);
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
			for (const [start, end] of span ? stretches(span, timeZone) : []) {
				const hours = await readWeatherHours(db, lakeId, ...clock(start, end, timeZone));
				await stageDays(db, importId, 'hourly', buildDays(hours, timeZone));
				await nextTurn();
			}
			if (await commitRebuiltDays(db, { lakeId, importId, revision, timeZone })) return;
		}
	} finally {
		await dropStaged(db, importId);
	}
}

/** Parts of the calendar from the day of the first hour to the day of the last, ends not included. */
function* stretches(
	[first_s, last_s]: [number, number],
	timeZone: string
): Generator<[start: IsoDate, end: IsoDate]> {
	const last = localDay(new Date(last_s * 1000), timeZone);
	let start = localDay(new Date(first_s * 1000), timeZone);
	while (start <= last) {
		const end = addDays(start, DAYS_AT_A_TIME);
		yield [start, end];
		start = end;
	}
}

function clock(start: IsoDate, end: IsoDate, timeZone: string): [from_s: number, to_s: number] {
	return [daySpan(start, timeZone).start_s, daySpan(end, timeZone).start_s];
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
	return [...merged.values()];
}

function buildDays(hours: readonly WeatherHour[], timeZone: string): DayValues[] {
	const byDay = new Map<IsoDate, WeatherHour[]>();
	for (const hour of hours) {
		const on = localDay(new Date(hour.at_s * 1000), timeZone);
		const ofDay = byDay.get(on);
		if (ofDay) ofDay.push(hour);
		else byDay.set(on, [hour]);
	}
	return [...byDay].map(([on, ofDay]) => dayFromHours(daySpan(on, timeZone), ofDay));
}
