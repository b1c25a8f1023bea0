import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import { withoutColdDays, withoutColdSpikes } from '#lib/model/spiked-air.ts';
import { STUCK_h, withoutStuckAir } from '#lib/model/stuck-air.ts';
import type { Context } from '../context.ts';
import { readSourceDays, readSourceHours } from '../storage/source-weather.ts';
import { readImportedDays, readWeatherHours } from '../storage/weather-days.ts';
import { warmerDay, warmerHours } from './elevation.ts';
import type { Origin, Trust } from './trust.ts';

/** A run of one value is seen whole only with what lies before and after. */
const MARGIN_S = STUCK_h * 3600;
/** A day that stands out is seen beside the next ones alone. */
const MARGIN_D = 3;

/**
 * The hours of each origin from `from_s` to before `to_s`, sorted. Those of sources are brought to the
 * lake's elevation. There is no temperature of a station that has stuck, nor of any origin where it is
 * colder than any weather between warmer hours.
 */
export async function readOriginHours(
	db: Context['db'],
	{ lakeId, origins }: Trust,
	from_s: number,
	to_s: number
): Promise<Map<Origin, readonly WeatherHour[]>> {
	const around = [from_s - MARGIN_S, to_s + MARGIN_S] as const;
	const brought = await readSourceHours(db, 'source_hour', idsOf(origins), ...around);
	const hours = new Map<Origin, readonly WeatherHour[]>();
	for (const origin of origins) {
		if (origin.kind === 'csv') {
			const imported = withoutColdSpikes(await readWeatherHours(db, lakeId, ...around));
			hours.set(
				origin,
				imported.filter(({ at_s }) => at_s >= from_s && at_s < to_s)
			);
			continue;
		}
		const running = withoutColdSpikes(withoutStuckAir(brought.get(origin.lakeSourceId) ?? []));
		const asked = running.filter(({ at_s }) => at_s >= from_s && at_s < to_s);
		hours.set(origin, warmerHours(asked, origin.correction_K));
	}
	return hours;
}

/**
 * The daily records of each origin, both ends included, sorted; those of sources corrected alike. A day
 * colder than any weather between warmer ones has no temperature.
 */
export async function readOriginDays(
	db: Context['db'],
	{ lakeId, origins, latitude }: Trust,
	from: IsoDate,
	to: IsoDate
): Promise<Map<Origin, readonly DayValues[]>> {
	const around = [addDays(from, -MARGIN_D), addDays(to, MARGIN_D)] as const;
	const brought = await readSourceDays(db, idsOf(origins), ...around);
	const days = new Map<Origin, readonly DayValues[]>();
	for (const origin of origins) {
		const own =
			origin.kind === 'csv'
				? await readImportedDays(db, lakeId, ...around)
				: (brought.get(origin.lakeSourceId) ?? []).map((day) =>
						warmerDay(day, origin.correction_K, latitude)
					);
		days.set(
			origin,
			withoutColdDays(own).filter(({ on }) => on >= from && on <= to)
		);
	}
	return days;
}

function idsOf(origins: readonly Origin[]): number[] {
	return origins.flatMap((origin) => (origin.kind === 'source' ? [origin.lakeSourceId] : []));
}
