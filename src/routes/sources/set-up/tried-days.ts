import { addDays, daysBetween, type IsoDate } from '#lib/model/calendar.ts';
import type { Context } from '#lib/server/context.ts';
import { getLake } from '#lib/server/services/lakes.ts';
import { localDay } from '#lib/server/services/local-day.ts';
import { storedWeather } from '#lib/server/services/stored-weather.ts';
import type { ReadCall } from './read-call.ts';

export interface TriedDays {
	from: IsoDate;
	to: IsoDate;
}

const BACK_D = 6;
const AHEAD_D = 3;
/** Days stored further back are too old for most services. */
const OLDEST_STORED_D = 90;

/**
 * The days to ask for in a try where none are typed: the last stored ones, so that they can be
 * compared, as far as the source reaches; else the last week. A forecast is asked for from today.
 */
export async function triedDays(
	context: Context,
	lakeId: string,
	{ part, reach }: Pick<ReadCall, 'part' | 'reach'>
): Promise<TriedDays> {
	const { timeZone } = await getLake(context, lakeId);
	const today = localDay(context.now(), timeZone);
	if (part === 'forecast') return { from: today, to: addDays(today, AHEAD_D) };
	const last = (await storedWeather(context, lakeId))[0]?.to ?? null;
	const oldest_d = Math.min(OLDEST_STORED_D, (reach.back_d ?? OLDEST_STORED_D) - BACK_D);
	const age_d = last === null ? Infinity : daysBetween(last, today);
	if (last !== null && age_d > 1 && age_d <= oldest_d)
		return { from: addDays(last, -BACK_D), to: last };
	return { from: addDays(today, -BACK_D), to: part === 'both' ? addDays(today, AHEAD_D) : today };
}
