import type { IsoDate } from '../calendar.ts';
import type { Forecast } from '../forecast.ts';
import { daysAhead } from '../days-ahead.ts';

/** The chance from which a warm spell is told. Lower than an even one, as it warns. Our choice. */
const TOLD_FROM = 0.3;

export interface ThawAhead {
	/** The first day with such a chance. */
	from: IsoDate;
	/** The largest chance in the days that are looked at. */
	chance: number;
}

/**
 * The warm spell that the weather forecast brings: the first day to come with a chance of three in ten
 * or more that a warm-spell rule is in force, `null` without one and while a spell is in force today.
 *
 * Days past the weather forecast are left out: that spring comes is no news.
 */
export function thawAhead(forecast: Forecast, today: IsoDate): ThawAhead | null {
	const [any] = forecast.loads;
	if (!any) return null;
	const chances = new Map(any.days.map(({ on, pThaw }) => [on, pThaw ?? 0]));
	if ((chances.get(today) ?? 0) >= 1) return null;
	const days = daysAhead(forecast.days, today)
		.map(({ on }) => ({ on, chance: chances.get(on) ?? 0 }))
		.filter(({ chance }) => chance >= TOLD_FROM);
	const [first] = days;
	if (!first) return null;
	return { from: first.on, chance: Math.max(...days.map(({ chance }) => chance)) };
}
