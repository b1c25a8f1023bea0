import type { IsoDate } from './calendar.ts';
import { OPEN_WATER } from './column.ts';
import { freezeUpDoubt, freezeUpSpan } from './freeze-up.ts';
import type { LakeFacts } from './lake.ts';
import type { Parameters } from './parameters.ts';
import type { Reading } from './reading.ts';
import { runSeason, type SeasonDay } from './season.ts';
import { withDoubt, type DoubtedDay } from './site-doubt.ts';
import type { SiteEvent, SiteWinter } from './site-winter.ts';
import type { WeatherDay } from './weather.ts';

export interface SiteSeasonInput {
	lake: LakeFacts;
	record: SiteWinter;
	weather: readonly WeatherDay[];
	readings: readonly Reading[];
	parameters?: Parameters;
	asOf: IsoDate;
	until: IsoDate;
}

/** A site's season as it was known on a day. */
export interface SiteSeason {
	/** Where the estimate begins. */
	from: IsoDate;
	days: DoubtedDay[];
	/** What was read by then. */
	readings: Reading[];
	iceOutOn: IsoDate | null;
	/** The same season going by other readings. */
	seasonWith: (readings: readonly Reading[], until: IsoDate) => SeasonDay[];
	/** True for a day built from hourly records. */
	hasHours: (on: IsoDate) => boolean;
	weatherOf: (on: IsoDate) => WeatherDay | undefined;
	lastWeatherOn: IsoDate | null;
}

/**
 * The season of a site from what had been observed, read and recorded by `asOf`, with its doubt;
 * `null` without a freeze-up, or when `asOf` lies before it.
 *
 * Observations of later days are left out; forecast days stay. Freeze-up known as between two days
 * runs from the middle one, and the doubt spans both.
 */
export function siteSeason(input: SiteSeasonInput): SiteSeason | null {
	const { asOf, record } = input;
	const span = freezeUpSpan(record);
	if (span === null || asOf < span.middle) return null;
	const weather = input.weather.filter((day) => day.on <= asOf || day.source === 'forecast');
	const readings = input.readings.filter((reading) => reading.on <= asOf);
	const events = record.events
		.filter((event) => event.on <= asOf)
		.map((each) => knownBy(each, asOf));
	const run = (from: IsoDate, read: readonly Reading[], until: IsoDate): SeasonDay[] =>
		runSeason({
			lake: input.lake,
			freezeUpOn: from,
			until,
			weather,
			events,
			readings: read,
			...(input.parameters ? { parameters: input.parameters } : {})
		});
	const until = input.until > asOf ? input.until : asOf;
	const iceOutOn = record.iceOutOn !== null && record.iceOutOn <= asOf ? record.iceOutOn : null;
	const middle = run(span.middle, readings, until).map((day) => openFrom(iceOutOn, day));
	const freezeUp = freezeUpDoubt(span, middle, (from) => run(from, readings, until));
	const byDay = new Map(weather.map((day) => [day.on, day]));
	return {
		from: span.middle,
		days: withDoubt(middle, readings, freezeUp),
		readings,
		iceOutOn,
		seasonWith: (read, to) => run(span.middle, read, to),
		hasHours: (on) => (byDay.get(on)?.aboveFreezing_h ?? null) !== null,
		weatherOf: (on) => byDay.get(on),
		lastWeatherOn: weather.findLast((day) => day.source === 'observed')?.on ?? null
	};
}

/** From a recorded ice-out on there is no ice, whatever is estimated. */
function openFrom(iceOutOn: IsoDate | null, day: SeasonDay): SeasonDay {
	return iceOutOn !== null && day.on >= iceOutOn ? { ...day, column: OPEN_WATER } : day;
}

/** An event as it was known: that a site froze again later was not. */
function knownBy(event: SiteEvent, asOf: IsoDate): SiteEvent {
	if (event.kind !== 'reopened' || event.refrozeOn === null || event.refrozeOn <= asOf)
		return event;
	return { ...event, refrozeOn: null };
}
