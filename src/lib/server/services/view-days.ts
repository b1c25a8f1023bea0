import { winterOf, winterSpan, type IsoDate, type WinterId } from '#lib/model/calendar.ts';
import type { SiteWinter } from '#lib/model/site-winter.ts';
import type { WeatherDay } from '#lib/model/weather.ts';

/** Which part of a lake's record is asked for. */
export interface AskedDays {
	winter?: WinterId;
	asOf?: IsoDate;
	/** The last day told, `asOf` without it. */
	until?: IsoDate;
	/** Tells all that may come of the winter instead. */
	toWinterEnd?: boolean;
}

/** The winter of the day asked for; of today, the latest up to now that anything is known of. */
export function winterToShow(
	winters: readonly WinterId[],
	today: IsoDate,
	asOf?: IsoDate
): WinterId {
	if (asOf !== undefined) return winterOf(asOf);
	const current = winterOf(today);
	return winters.find((winter) => winter <= current) ?? current;
}

/** The last observation that stands for the winter: of today at most, of the ice-out at most. */
export function defaultAsOf(
	{ winter, iceOutOn }: SiteWinter,
	days: readonly WeatherDay[],
	today: IsoDate
): IsoDate {
	const [first, last] = winterSpan(winter);
	const observed = days.findLast(({ air_degC }) => air_degC !== null)?.on;
	const ends = [today, last, observed, iceOutOn].filter((on) => typeof on === 'string');
	return [first, ends.toSorted()[0] ?? first].toSorted()[1] ?? first;
}

/** Nothing comes after ice-out that is worth telling, known `now` though the estimate ends before. */
export function lastTold(
	{ until, toWinterEnd }: AskedDays,
	{ winter, iceOutOn }: SiteWinter,
	asOf: IsoDate,
	now: IsoDate = asOf
): IsoDate {
	if (!toWinterEnd) return until ?? asOf;
	if (iceOutOn !== null && iceOutOn <= now) return asOf;
	const [, last] = winterSpan(winter);
	return last > asOf ? last : asOf;
}

/** A view of the past is not told how old its weather is. */
export function isPresent({ winter, asOf }: AskedDays, shown: WinterId, today: IsoDate): boolean {
	return asOf === undefined && (winter === undefined || shown === winterOf(today));
}
