import { UNKNOWN_AIR, type WeatherDay } from '#lib/model/weather.ts';
import type { Context } from '../context.ts';
import { latestOf } from './latest.ts';
import type { LakeRecord } from './lakes.ts';
import { daySpan } from './local-day.ts';

/**
 * The days without the temperature and the fall of one that is not over, where they come from its hours:
 * those of a day count as all of it from 20 on, and a thaw in its last hours would be taken for the frost
 * of the others. Warm hours that were seen of it stay. What is forecast of the rest completes it.
 */
export function withoutRunningDay(
	ctx: Pick<Context, 'now'>,
	lake: Pick<LakeRecord, 'timeZone' | 'today'>,
	days: readonly WeatherDay[]
): WeatherDay[] {
	const { at_s } = latestOf(ctx, lake);
	return days.map((day) => {
		const isOfHours = day.freezing_degCd !== null;
		return isOfHours && daySpan(day.on, lake.timeZone).end_s > at_s ? unknown(day) : day;
	});
}

function unknown(day: WeatherDay): WeatherDay {
	const seen_h = day.aboveFreezing_h ?? 0;
	return {
		...day,
		...UNKNOWN_AIR,
		aboveFreezing_h: seen_h > 0 ? seen_h : null,
		precipitation_kg_m2: null,
		snowfall_kg_m2: null
	};
}
