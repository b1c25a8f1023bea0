import type { IsoDate } from './calendar.ts';
import type { IceColumn } from './column.ts';
import { dayForcing, type DayForcing } from './forcing.ts';
import type { LakeFacts } from './lake.ts';
import { copyParameters, parametersFor, type Parameters } from './parameters.ts';
import type { Reading } from './reading.ts';
import { checkSeasonInput } from './season-input.ts';
import { seasonWeather, type SeasonWeatherDay } from './season-weather.ts';
import {
	beginDay,
	passDay,
	freshSite,
	NOTHING_READ,
	readDay,
	type DayRead,
	type RunningSite
} from './running-site.ts';
import { pictureOf } from './site-ice.ts';
import { isHeldOpen } from './site-events.ts';
import type { SiteEvent } from './site-winter.ts';
import { clearSky_W_m2 } from './sun.ts';
import type { DaySource, WeatherDay } from './weather.ts';

/** Equal parts of a day in which its processes act side by side. */
export const STEPS_PER_DAY = 4;

export interface SeasonInput {
	lake: LakeFacts;
	freezeUpOn: IsoDate;
	/** Open water until this day, where the days begin earlier. */
	openUntil?: IsoDate;
	/** The last day to state, inclusive. */
	until: IsoDate;
	/** Sorted, each day once; a day missing between is a gap. */
	weather: readonly WeatherDay[];
	events?: readonly SiteEvent[];
	/** They re-anchor the state from their day on. */
	readings?: readonly Reading[];
	parameters?: Parameters;
	stepsPerDay?: number;
}

/** A site on one day; everything but the day's own weather is as of its start. */
export interface SeasonDay {
	on: IsoDate;
	source: DaySource;
	air_degC: number | null;
	/** Frost and thaw since freeze-up, this day not counted. */
	fdd_degCd: number;
	tdd_degCd: number;
	/** Of the day itself; zero where it has no temperature. */
	freezing_degCd: number;
	thawing_degCd: number;
	aboveFreezing_h: number | null;
	/** Clear-sky mean of the day. */
	sun_W_m2: number;
	column: IceColumn;
	/** Every day since freeze-up, or since a snow depth measured on the ice, reported what fell. */
	snowKnown: boolean;
	/** Days without temperature since freeze-up or the last re-anchoring. */
	gapDays: number;
	daysSinceAnchor: number | null;
	/** Readings that re-anchored the state on this day. */
	anchoredBy: readonly string[];
	/** Readings of this day set aside as far too thick. */
	doubtfulReadings: readonly string[];
	/** Ice melted since the thickest day. */
	meltSincePeak_m: number;
}

/**
 * A site's winter day by day, from freeze-up to `until` or to the day after the last weather,
 * whichever comes first: never past what is known.
 *
 * The state on a day is that at its start. @throws RangeError on an input that is not finite or sorted
 */
export function runSeason(input: SeasonInput): SeasonDay[] {
	checkSeasonInput(input);
	const { lake, freezeUpOn, events = [], readings = [] } = input;
	// Made as those of an ensemble's member are: objects of two makes slow both down by half.
	const parameters = copyParameters(input.parameters ?? parametersFor(lake));
	const steps = input.stepsPerDay ?? STEPS_PER_DAY;
	const site = freshSite();
	let previous: WeatherDay | null = null;
	return seasonWeather(input.weather, freezeUpOn, input.until).map((day) => {
		const sun_W_m2 = clearSky_W_m2(lake.latitude, day.dayOfYear, lake.elevation_m ?? 0);
		const forcing = dayForcing(day, previous, lake.latitude, sun_W_m2);
		const isOpen = isWaiting(input, day.on) || beginsOpen(site, day.on, events, parameters);
		const anchoring = isOpen ? NOTHING_READ : readDay(site, on(readings, day.on));
		const state = stateOn(day, forcing, site, anchoring);
		if (!isOpen) passDay(site, forcing, parameters, steps);
		previous = day.reported;
		return state;
	});
}

function isWaiting({ openUntil }: SeasonInput, day: IsoDate): boolean {
	return openUntil !== undefined && day < openUntil;
}

function beginsOpen(
	site: RunningSite,
	day: IsoDate,
	events: readonly SiteEvent[],
	parameters: Parameters
): boolean {
	return beginDay(site, on(events, day), isHeldOpen(events, day), parameters);
}

function on<T extends { on: IsoDate }>(things: readonly T[], day: IsoDate): readonly T[] {
	return things.length === 0 ? things : things.filter((thing) => thing.on === day);
}

function stateOn(
	day: SeasonWeatherDay,
	forcing: DayForcing,
	site: RunningSite,
	read: DayRead
): SeasonDay {
	return {
		on: day.on,
		source: forcing.hasAir ? (day.reported?.source ?? 'gap') : 'gap',
		air_degC: forcing.hasAir ? day.likelyAir_degC : null,
		fdd_degCd: site.fdd_degCd,
		tdd_degCd: site.tdd_degCd,
		freezing_degCd: forcing.freezing_degCd,
		thawing_degCd: forcing.hasAir ? forcing.thawing_degCd : 0,
		aboveFreezing_h: forcing.aboveFreezing_h,
		sun_W_m2: forcing.sun_W_m2,
		column: pictureOf(site.ice),
		snowKnown: site.snowKnown,
		gapDays: site.gapDays,
		daysSinceAnchor: site.daysSinceAnchor,
		anchoredBy: read.anchoredBy,
		doubtfulReadings: read.doubtful,
		meltSincePeak_m: site.melt_m
	};
}
