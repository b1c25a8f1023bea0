import { shortDay } from '#lib/ui/format/day.ts';
import { hoursAgo } from '#lib/ui/format/moment.ts';
import type { Upkeep } from './upkeep.ts';

/** The forecast's age, and whether it counts; `null` where there is none. */
export function forecastWords({
	forecastAge_h,
	isForecastUsed,
	forecastTo
}: Pick<Upkeep, 'forecastAge_h' | 'isForecastUsed' | 'forecastTo'>): string | null {
	if (forecastAge_h === null) return null;
	const issued = `issued ${hoursAgo(forecastAge_h)}`;
	if (!isForecastUsed) return `${issued}: too old, not used`;
	return forecastTo === null ? issued : `${issued}, up to ${shortDay(forecastTo)}`;
}
