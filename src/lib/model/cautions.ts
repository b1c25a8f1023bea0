import { daysBetween, type IsoDate } from './calendar.ts';
import { total_m } from './column.ts';
import { FLOODABLE_m } from './flood-ahead.ts';
import type { Caution } from './forecast.ts';
import type { LakeFacts } from './lake.ts';
import { ENGINEER_ABOVE_kg } from './load-case.ts';
import type { Reading } from './reading.ts';
import { ROTTEN, rottenText } from './rotten.ts';
import { openedSince } from './since/open-since.ts';
import type { Since } from './since/since.ts';
import type { SiteDay } from './site-day.ts';
import { spellText } from './spell-text.ts';
import type { WarmDay } from './warm-day.ts';
import { OLD_WEATHER_h } from './since/since.ts';
import { ROTTING_SUN_W_m2, SHADING_SNOW_m } from './warm-spell.ts';
import type { Words } from './words.ts';

/** From here on an age is told in days. */
const WHOLE_DAYS_d = 3;
const EARLY_m = 0.15; // below the least that strict charts ask of anybody
const NEAR_FLOODING_m = 0.05; // one ordinary snowfall; our choice
const SLUSH_m = 0.005;
const MUCH_WHITE = 0.2; // white ice is a fifth to a third of the sheet at the measured lakes

export interface CautionInput {
	lake: LakeFacts;
	asOf: IsoDate;
	/** What was seen after `asOf`; `null` for a view of the past. */
	since: Since | null;
	today: Pick<SiteDay, 'day' | 'gapDays' | 'white_m'> | null;
	warm: WarmDay | null;
	isColdSnap: boolean;
	floodsWith_m: number | null;
	/** When half of the spots have no slush left; `null`: not told. */
	slushFrozenBy: IsoDate | null;
	lastWeatherOn: IsoDate | null;
	/** All of the winter's, to `asOf`. */
	readings: readonly Reading[];
	/** Readings set aside, or far from what had been estimated. */
	doubtful: ReadonlySet<string>;
	iceOutOn: IsoDate | null;
	/** Snow was cleared off the ice that there is. */
	isCleared: boolean;
	/** The last day that the site may freeze over, where nobody has found ice yet. */
	mayBeOpenUntil: IsoDate | null;
	words: Words;
}

/** What a reader must have before the eyes beside any answer; the weightiest first. */
export function cautionsFor(input: CautionInput): Caution[] {
	if (input.iceOutOn !== null)
		return [...afterIceOut(input.iceOutOn, input), ...ofReadings(input), ...always(input)];
	return [
		...ofTheTime(input),
		...ofOpening(input),
		...ofTheDay(input),
		...ofTheIce(input),
		...ofTheRecord(input),
		...ofReadings(input),
		...always(input)
	];
}

/** First of all: an answer of another day is none for today. */
function ofTheTime({ asOf, since, lastWeatherOn, words }: CautionInput): Caution[] {
	if (!since?.isWeatherOld) return [];
	const shown = lastWeatherOn !== null && lastWeatherOn < asOf ? lastWeatherOn : asOf;
	const { weatherTo, now } = since;
	const age_d = daysBetween(shown, now);
	const known = weatherTo ? `${weatherTo.clock} on ${words.day(weatherTo.on)}` : words.day(shown);
	return given(
		true,
		'weatherOld',
		age_d < WHOLE_DAYS_d
			? `The weather is known to ${known}, more than ${OLD_WEATHER_h} hours ago; what has happened since is not in this.`
			: `This is the state of ${words.day(shown)}, ${age_d} days ago; what has happened since is not in it.`
	);
}

/** Nothing else matters of ice that is gone. */
function afterIceOut(iceOutOn: IsoDate, { words }: CautionInput): Caution[] {
	return [{ code: 'iceOut', text: `Ice-out was recorded on ${words.day(iceOutOn)}.` }];
}

function ofOpening({ since, words }: CautionInput): Caution[] {
	const openedOn = since === null ? null : openedSince(since);
	if (openedOn === null) return [];
	const text = `The site opened again on ${words.day(openedOn)}: stay off. What was estimated of the days before it is gone.`;
	return [{ code: 'openedAgain', text }];
}

function ofTheDay({ warm, isColdSnap, words }: CautionInput): Caution[] {
	const spell = warm === null ? null : spellText(warm, words);
	return [
		...given(spell !== null, warm?.badCoreOn ? 'badCore' : 'warmSpell', spell ?? ''),
		...given(
			isColdSnap,
			'coldSnap',
			'Sudden cold on thinly covered ice opens cracks: it is taken to carry half the load.'
		)
	];
}

function ofTheIce({ asOf, today, floodsWith_m, slushFrozenBy, words }: CautionInput): Caution[] {
	if (today === null) return [];
	const { column, sun_W_m2 } = today.day;
	const ice_m = total_m(column);
	const isFlooding =
		floodsWith_m !== null && ice_m >= FLOODABLE_m && floodsWith_m < NEAR_FLOODING_m;
	const isInSun = sun_W_m2 > ROTTING_SUN_W_m2 && column.snow_m < SHADING_SNOW_m;
	// Where half of the spots have none already, a day would only sound like comfort.
	const frozenBy =
		slushFrozenBy === null || slushFrozenBy <= asOf
			? ''
			: ` More likely than not it is frozen by ${words.day(slushFrozenBy)}.`;
	const white = `${words.thickness(today.white_m)} of ${words.thickness(ice_m)}`;
	return [
		...given(column.liquidFraction >= ROTTEN, 'rotting', `Rotting: ${rottenText(column)}`),
		...given(
			ice_m > 0 && isInSun,
			'sunOnBareIce',
			'Sun on bare ice takes its strength before its thickness, even in frost.'
		),
		...given(
			column.slush_m >= SLUSH_m,
			'slush',
			`${slushText(column.slush_m, words)} under the snow: it carries nothing and may not be seen from above.${frozenBy}`
		),
		...given(isFlooding, 'floodingNear', floodingText(floodsWith_m ?? 0, words)),
		...given(
			ice_m > 0 && today.white_m >= MUCH_WHITE * ice_m,
			'whiteIce',
			`${white} is estimated to be white ice, which counts half.`
		),
		...given(
			ice_m < EARLY_m,
			'earlyIce',
			'Young ice differs greatly within a few steps; open water may be next to it.'
		)
	];
}

/** Half a centimetre is no half inch, and none of it would be a lie. */
function slushText(slush_m: number, words: Words): string {
	const depth = words.depth(slush_m);
	return depth.startsWith('0 ') ? 'A little slush' : `About ${depth} of slush`;
}

function floodingText(snow_m: number, words: Words): string {
	return snow_m < 0.01
		? 'The snow is about as heavy as the ice can float: water comes up wherever there is a crack or a hole.'
		: `About ${words.depth(snow_m)} more snow floods the ice.`;
}

function ofTheRecord({ today, isCleared, mayBeOpenUntil, words }: CautionInput): Caution[] {
	const gapDays = today?.gapDays ?? 0;
	return [
		...given(
			mayBeOpenUntil !== null,
			'freezeUpNotSure',
			`Freeze-up may have come as late as ${words.day(mayBeOpenUntil ?? '')}: on this day the site may still be open.`
		),
		...given(
			today !== null && !today.day.snowKnown,
			'snowUnknown',
			'Snow on the ice is not known: usual snow for the place and date stands in, and nothing counts as expected or reached.'
		),
		...given(
			gapDays > 0,
			'gaps',
			`${gapDays === 1 ? 'One day' : `${gapDays} days`} without a temperature since freeze-up or the last hole: no ice is made of them, and the doubt is wider.`
		),
		// Common practice, no source; that snow keeps ice thin follows from conduction.
		...given(
			isCleared,
			'clearedIce',
			'Told is the ice that was cleared: under its banks and beside it the ice is thinner, cracks along the banks let water up, and traffic on one line tires it.'
		)
	];
}

function ofReadings({ readings: known, since, doubtful, asOf, words }: CautionInput): Caution[] {
	const later = since?.readings ?? [];
	const readings = [...known, ...later];
	const at = ({ place, on }: Reading): string =>
		`${place ?? 'a place without a name'} on ${words.day(on)}`;
	return [
		...given(
			later.length > 0,
			'readingNotIn',
			`What was read after ${words.day(asOf)} counts against the ice at once, and for it only when the weather of its day is in.`
		),
		...readings
			.filter((reading) => reading.kind === 'wentThrough')
			.map((reading) => ({ code: 'wentThrough', text: `The ice broke at ${at(reading)}.` })),
		...readings
			.filter((reading) => doubtful.has(reading.id))
			.map((reading) => ({
				code: 'doubtfulReading',
				text: `The reading at ${at(reading)} is far from what was expected: check it.`
			}))
	];
}

function always({ lake, words }: CautionInput): Caution[] {
	return [
		...given(
			lake.water !== 'lake',
			'waterLevel',
			`A change of the water level since the last check closes a ${lake.water} until it is checked.`
		),
		{
			code: 'openPartOnly',
			text: 'Estimates are for the open part of the site. A current, inlet, narrows, spring, ridge, bog, reeds, dock, rock, landing or snowdrift can leave a fraction of it.'
		},
		{
			code: 'chartsForClearIce',
			text: 'Charts are for new, clear, hard ice. A drilled hole decides.'
		},
		{
			code: 'askAnEngineer',
			text: `Above ${words.mass(ENGINEER_ABOVE_kg)}, for commercial or public use, and for shelters parked with vehicles: a qualified ice engineer and the local rules.`
		},
		{ code: 'ordersFirst', text: 'Orders and removal dates of the local authorities come first.' }
	];
}

function given(holds: boolean, code: string, text: string): Caution[] {
	return holds ? [{ code, text }] : [];
}
