import { shortDay } from '#lib/ui/format/day.ts';
import { hoursAgo } from '#lib/ui/format/moment.ts';
import type { Upkeep } from './upkeep.ts';

/** `since_h` have passed since the page was made. The forecast's age, and whether it counts; `null` where there is none. */
export function forecastWords(
	{
		forecastAge_h,
		isForecastUsed,
		forecastTo
	}: Pick<Upkeep, 'forecastAge_h' | 'isForecastUsed' | 'forecastTo'>,
	since_h = 0
): string | null {
	if (forecastAge_h === null) return null;
	const issued = `issued ${hoursAgo(forecastAge_h + since_h)}`;
	if (!isForecastUsed) return `${issued}: too old, not used`;
	return forecastTo === null ? issued : `${issued}, up to ${shortDay(forecastTo)}`;
}

/** How long ago the last observation was. */
export function observedWords(
	{ lastObservedAge_h }: Pick<Upkeep, 'lastObservedAge_h'>,
	since_h = 0
): string {
	return lastObservedAge_h === null ? 'none yet' : hoursAgo(lastObservedAge_h + since_h);
}

/** What an age was on a day long gone. @example byThen('2 hours ago') // => '2 hours before' */
export function byThen(words: string): string {
	return words.replace(/ ago\b/, ' before');
}
