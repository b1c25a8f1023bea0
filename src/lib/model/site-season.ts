import type { IsoDate } from './calendar.ts';
import { OPEN_WATER } from './column.ts';
import { freezeUpSpan, type FreezeUpSpan } from './freeze-up.ts';
import { showsIce } from './hole.ts';
import type { LakeFacts } from './lake.ts';
import { withoutFarComfort } from './open-part.ts';
import type { Parameters } from './parameters.ts';
import type { Reading } from './reading.ts';
import { runSeason, type SeasonDay } from './season.ts';
import type { SiteEvent, SiteWinter } from './site-winter.ts';
import type { WeatherDay } from './weather.ts';

export interface SiteSeasonInput {
	lake: LakeFacts;
	record: SiteWinter;
	weather: readonly WeatherDay[];
	readings: readonly Reading[];
	/** Names of the lake's weak spots. */
	weakSpots?: readonly string[];
	parameters?: Parameters;
	asOf: IsoDate;
	until: IsoDate;
}

/** A site's season as it was known on a day. */
export interface SiteSeason {
	freezeUp: FreezeUpSpan;
	/** From the first day that freeze-up may have been. */
	days: SeasonDay[];
	/** What was observed, forecast, read and done by then. */
	weather: WeatherDay[];
	readings: Reading[];
	events: SiteEvent[];
	iceOutOn: IsoDate | null;
	/** The same season going by other readings. */
	seasonWith: (readings: readonly Reading[], until: IsoDate) => SeasonDay[];
	/** True for a day built from hourly records. */
	hasHours: (on: IsoDate) => boolean;
	weatherOf: (on: IsoDate) => WeatherDay | undefined;
	lastWeatherOn: IsoDate | null;
	/** Freeze-up may still lie ahead of the day of asking: nobody has found ice yet. */
	mayBeOpen: boolean;
}

/**
 * The season of a site from what had been observed, read and recorded by `asOf`; `null` without a
 * freeze-up, or when `asOf` lies before it.
 *
 * Observations of later days are left out; forecast days stay. Freeze-up known as between two days is
 * open water until the middle one, or until somebody has drilled ice before it.
 */
export function siteSeason(input: SiteSeasonInput): SiteSeason | null {
	const { asOf, record } = input;
	const span = freezeUpSpan(record);
	if (span === null || asOf < span.first) return null;
	const weather = input.weather.filter((day) => day.on <= asOf || day.source === 'forecast');
	const readings = input.readings
		.filter((reading) => reading.on <= asOf)
		.map((reading) => withoutFarComfort(reading, input.weakSpots));
	const events = record.events
		.filter((event) => event.on <= asOf)
		.map((each) => knownBy(each, asOf));
	const run = (read: readonly Reading[], until: IsoDate): SeasonDay[] =>
		runSeason({
			lake: input.lake,
			freezeUpOn: span.first,
			openUntil: formedOn(span, read),
			until,
			weather,
			events,
			readings: read,
			...(input.parameters ? { parameters: input.parameters } : {})
		});
	const until = input.until > asOf ? input.until : asOf;
	const iceOutOn = record.iceOutOn !== null && record.iceOutOn <= asOf ? record.iceOutOn : null;
	const byDay = new Map(weather.map((day) => [day.on, day]));
	return {
		freezeUp: span,
		days: run(readings, until).map((day) => openFrom(iceOutOn, day)),
		weather,
		readings,
		events,
		iceOutOn,
		seasonWith: run,
		hasHours: (on) => (byDay.get(on)?.aboveFreezing_h ?? null) !== null,
		weatherOf: (on) => byDay.get(on),
		lastWeatherOn: weather.findLast((day) => day.source === 'observed')?.on ?? null,
		mayBeOpen: asOf < span.last && !readings.some(showsIce)
	};
}

/** The day to take for freeze-up: the middle one, unless ice was drilled before it. */
function formedOn({ first, middle }: FreezeUpSpan, readings: readonly Reading[]): IsoDate {
	const found = readings.filter((reading) => reading.on >= first && showsIce(reading));
	return [middle, ...found.map(({ on }) => on)].toSorted()[0] ?? middle;
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
