import { addDays, winterOf, winterSpan, type IsoDate } from '#lib/model/calendar.ts';
import { LONGEST_LEAD_d } from '#lib/model/ensemble/forecast-error.ts';
import { callFor, spansOf, type Span, type WeatherSource } from '../../weather/source/contract.ts';

/** Days before freeze-up that are asked for too: warm spells and cold snaps look back. */
export const BEFORE_FREEZE_UP_D = 3;
/** Asked for of a lake whose freeze-up is not recorded. */
const WITHOUT_FREEZE_UP_D = 30;
/** What a station reports late is waited for so long. */
const LATE_D = 31;
/** Hours of a longer span would hold the server up while they are read and stored. */
const LONGEST_SPAN_D = 92;

export interface Brought {
	/** The lake's own day. */
	today: IsoDate;
	freezeUpOn: IsoDate | null;
	/** The last day with a temperature from this source. */
	lastOn: IsoDate | null;
	/** The lake's day on which history was last asked for with success. */
	askedOn: IsoDate | null;
	/** The first day that history has been asked for. */
	askedFrom: IsoDate | null;
}

export interface Plan {
	/** Spans of history to ask for: first what is new, then what is missing, the latest first. */
	history: Span[];
	/** How many of the first spans are what is new, and are asked for before the forecast. */
	newSpans: number;
	/** The first day that is wanted; once all is asked for, nothing before it is asked again. */
	wantedFrom: IsoDate;
	forecast: Span | null;
}

/** What to ask of a source for a lake: the new days, the winter so far, and what is to come. */
export function planRefresh(source: WeatherSource, brought: Brought): Plan {
	const { today, askedFrom } = brought;
	const wantedFrom = firstWanted(brought);
	const newFrom = askedFrom === null ? null : newDaysFrom(brought, askedFrom);
	const recent = newFrom === null ? [] : historySpans(source, { from: newFrom, to: today }, today);
	const missingTo = askedFrom === null ? today : addDays(askedFrom, -1);
	const missing = historySpans(source, { from: wantedFrom, to: missingTo }, today);
	const ahead_d = callFor(source, 'forecast')?.reach.ahead_d ?? LONGEST_LEAD_d;
	const forecast = spansOf(source, 'forecast', { from: today, to: addDays(today, ahead_d) }, today);
	return {
		history: [...recent, ...missing.toReversed()],
		newSpans: askedFrom === null ? Math.min(1, missing.length) : recent.length,
		wantedFrom,
		forecast: forecast[0] ?? null
	};
}

function firstWanted({ today, freezeUpOn }: Brought): IsoDate {
	if (freezeUpOn !== null) return addDays(freezeUpOn, -BEFORE_FREEZE_UP_D);
	const [winterFrom] = winterSpan(winterOf(today));
	const from = addDays(today, -WITHOUT_FREEZE_UP_D);
	return from > winterFrom ? from : winterFrom;
}

/** From the last day that it brought, however long the app was off; a dead station is not asked for ever. */
function newDaysFrom({ today, lastOn, askedOn }: Brought, askedFrom: IsoDate): IsoDate {
	const lastWhole = lastOn === null ? askedFrom : addDays(lastOn, -1);
	const latest = addDays(askedOn ?? today, -LATE_D);
	return lastWhole > latest ? lastWhole : latest;
}

export function historySpans(source: WeatherSource, asked: Span, today: IsoDate): Span[] {
	return spansOf(source, 'history', asked, today).flatMap(parts);
}

function parts({ from, to }: Span): Span[] {
	const short: Span[] = [];
	for (let start = from; start <= to; start = addDays(start, LONGEST_SPAN_D)) {
		const end = addDays(start, LONGEST_SPAN_D - 1);
		short.push({ from: start, to: end < to ? end : to });
	}
	return short;
}
