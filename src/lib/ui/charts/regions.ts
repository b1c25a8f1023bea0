import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { DaySource } from '#lib/model/weather.ts';
import { shortDay } from '../format/day.ts';

/** What an estimate goes by: measured weather, a forecast, past winters, or nothing. */
export type Region = 'observed' | 'forecast' | 'climate' | 'unknown';

/** Where one thing to go by ends and the next begins. */
export interface Border {
	on: IsoDate;
	/** What lies right of it; `today` is the day asked for. */
	kind: 'today' | Exclude<Region, 'observed'>;
	text: string;
}

interface SourceDay {
	on: IsoDate;
	source: DaySource;
}

/** What a day is called to go by; `climate` is what stands in past the forecast. */
export function goesBy(region: Region, climate: string): string {
	return {
		observed: 'measured weather',
		forecast: 'forecast',
		climate,
		unknown: 'no weather'
	}[region];
}

/** What each day goes by; days that nobody reported count as what they lie between. */
export function regionsOf(days: readonly SourceDay[]): Region[] {
	const known = days.map(({ source }) => (source === 'gap' ? null : source));
	const last = known.findLastIndex((source) => source !== null);
	let region: Region = 'observed';
	return known.map((source, index) => {
		if (index > last) return 'unknown';
		region = source ?? region;
		return region;
	});
}

/**
 * The day asked for and the days from which something else is gone by, with the words for them.
 * The state on a day is that of its start, so a change on the day after is drawn on the day itself.
 */
export function borders(
	days: readonly SourceDay[],
	{ asOf, today, climate }: { asOf: IsoDate; today: IsoDate; climate: string }
): Border[] {
	const text = asOf === today ? `today, ${shortDay(asOf)}` : shortDay(asOf);
	const changes = regionsOf(days).flatMap((region, index, all): Border[] => {
		const on = days[index]?.on;
		if (on === undefined || region === 'observed' || region === all[index - 1]) return [];
		const words = `${goesBy(region, climate)} from here`;
		return [{ on: on === addDays(asOf, 1) ? asOf : on, kind: region, text: words }];
	});
	return [{ on: asOf, kind: 'today', text }, ...changes];
}
