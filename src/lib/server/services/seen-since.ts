import { addDays, winterSpan, type IsoDate } from '#lib/model/calendar.ts';
import { dayFromHours, type WeatherHour } from '#lib/model/hours-to-days.ts';
import type { Reading } from '#lib/model/reading.ts';
import { partDays } from '#lib/model/since/part-day.ts';
import { OLD_WEATHER_h, type LakeMinute, type Since } from '#lib/model/since/since.ts';
import type { SiteWinter } from '#lib/model/site-winter.ts';
import { daySpan, localMinute } from './local-day.ts';
import type { KnownWeather } from './weather-upkeep.ts';

export interface SeenSince {
	asOf: IsoDate;
	today: IsoDate;
	timeZone: string;
	record: SiteWinter;
	/** All of the winter's. */
	readings: readonly Reading[];
	known: Pick<KnownWeather, 'by' | 'hours' | 'upkeep'>;
}

/** Part days further on than this after the last whole one say nothing of its ice. Our choice. */
const LONGEST_D = 60;
const HOUR_MS = 3_600_000;

/** What has been seen after the day of asking, up to now: it counts against the ice at once. */
export function seenSince(seen: SeenSince): Since {
	const { asOf, today, timeZone, record, known } = seen;
	const [, winterEnd] = winterSpan(record.winter);
	const now = asOf > today ? asOf : today;
	const last = [today, winterEnd, addDays(asOf, LONGEST_D)].toSorted()[0] ?? today;
	const isSince = ({ on }: { on: IsoDate }): boolean => on > asOf && on <= today;
	const spans = [];
	for (let on = addDays(asOf, 1); on <= last; on = addDays(on, 1))
		spans.push(daySpan(on, timeZone));
	const { iceOutOn } = record;
	return {
		now,
		days: partDays(spans, known.hours),
		readings: seen.readings.filter(isSince),
		events: record.events.filter(isSince),
		iceOutOn: iceOutOn !== null && isSince({ on: iceOutOn }) ? iceOutOn : null,
		...weatherAge(seen)
	};
}

function weatherAge({
	asOf,
	timeZone,
	known
}: SeenSince): Pick<Since, 'warmLast_h' | 'weatherTo' | 'isWeatherOld'> {
	const at = known.upkeep.lastObservedAt;
	if (at === null) return { warmLast_h: null, weatherTo: null, isWeatherOld: false };
	return {
		warmLast_h: warmLast_h(known.hours, at),
		weatherTo: minuteOf(at, asOf, timeZone),
		isWeatherOld: known.by.getTime() - at.getTime() > OLD_WEATHER_h * HOUR_MS
	};
}

/** Of the 24 hours to an instant; `null` where not nearly all of them are known. */
function warmLast_h(hours: readonly WeatherHour[], to: Date): number | null {
	const end_s = to.getTime() / 1000;
	const day = { on: '', start_s: end_s - 86_400, end_s };
	if (dayFromHours(day, hours).air_degC === null) return null;
	return partDays([day], hours)[0]?.aboveFreezing_h ?? null;
}

/** `null` at the end of the day of asking: that day says it. */
function minuteOf(at: Date, asOf: IsoDate, timeZone: string): LakeMinute | null {
	return at.getTime() === daySpan(asOf, timeZone).end_s * 1000 ? null : localMinute(at, timeZone);
}
