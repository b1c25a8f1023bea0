import type { IsoDate, WinterId } from '../calendar.ts';
import type { Forecast, ForecastLoad, LoadStatus } from '../forecast.ts';
import type { Outlook } from '../outlook.ts';
import type { Reading } from '../reading.ts';
import type { TellingFacts } from './facts.ts';
import { floodAhead } from '../flood-ahead.ts';
import { lastHoleOn, readingDueOn } from './reading-due.ts';
import { thawAhead } from './thaw-ahead.ts';

export interface GatherInput {
	/** The site's name, where the lake has several. */
	site: string | null;
	outlook: Outlook;
	/** Today at the lake. */
	today: IsoDate;
	/** Of this winter. */
	readings: readonly Reading[];
	/** Ids of the loads to be told of. */
	loads: readonly string[];
	readingAfter_d: number;
	/** The last observed temperature; `null` where none is known. */
	observed: { on: IsoDate; age_h: number } | null;
	removalOn: IsoDate | null;
	/** The latest day to have each load off, by its id. */
	offBy: ReadonlyMap<string, IsoDate | null>;
}

/** Weather older than this is told as stale: as the caution of an estimate's age. */
const STALE_h = 48;

/** What may be told, from the whole answer for a site. */
export function gatherFacts(input: GatherInput): TellingFacts {
	const { outlook, today, readings } = input;
	const { forecast, warmSpell } = outlook;
	const chosen = forecast.loads.filter(({ id }) => input.loads.includes(id));
	const isOver = isIceOut(forecast, today);
	const loads = chosen.map((load) => ({
		id: load.id,
		name: load.name,
		status: load.status,
		reason: load.reason,
		expectedFrom: load.expectedFrom,
		likelyFrom: load.likelyFrom,
		until: load.until,
		offBy: offByOf(load, input)
	}));
	return {
		site: input.site,
		today,
		winter: forecast.winter,
		asOf: forecast.asOf,
		loads,
		spell:
			warmSpell.state === 'none' || warmSpell.text === null || isOver
				? null
				: { since: warmSpell.since ?? forecast.asOf, text: warmSpell.text },
		thaw: isOver ? null : thawAhead(forecast, today),
		flood: isOver ? null : floodAhead(forecast, outlook.floodsWithMoreSnow_m, today),
		iceOut: forecast.iceOut,
		readingDueOn: isOver ? null : dueOn(input, loads),
		lastHoleOn: lastHoleOn(readings),
		stale: isOver ? null : staleSince(input),
		removalOn: input.removalOn
	};
}

/** Of a site of which nothing is estimated now. */
export interface UnestimatedInput {
	site: string | null;
	today: IsoDate;
	winter: WinterId;
	loads: readonly { id: string; name: string }[];
	removalOn: IsoDate | null;
}

/** What was told of a load before counts no more where its weather or its freeze-up day was taken back. */
const UNESTIMATED =
	'Nothing is estimated now: there is no weather, or no freeze-up day that lies before its end. What was told before counts no more.';

/** What is left to be told where nothing is estimated: that no load has a day, and the authority's. */
export function unestimatedFacts({ loads, ...input }: UnestimatedInput): TellingFacts {
	const unknown = { expectedFrom: null, likelyFrom: null, until: null, offBy: null };
	return {
		...input,
		asOf: input.today,
		loads: loads.map(({ id, name }) => {
			const status: LoadStatus = 'notYet';
			return { id, name, status, reason: UNESTIMATED, ...unknown };
		}),
		spell: null,
		thaw: null,
		flood: null,
		iceOut: null,
		readingDueOn: null,
		lastHoleOn: null,
		stale: null
	};
}

/**
 * What is not expected before that day is not to be out there at all: its status says so. Holes can have
 * let out what was only expected, and that would else be told the later day of even chances alone.
 */
function offByOf({ id, expectedFrom }: ForecastLoad, { offBy }: GatherInput): IsoDate | null {
	const on = offBy.get(id) ?? null;
	return on !== null && expectedFrom !== null && expectedFrom <= on ? on : null;
}

function isIceOut({ iceOut }: Forecast, today: IsoDate): boolean {
	return iceOut !== null && iceOut.p90 !== null && iceOut.p90 <= today;
}

function dueOn(
	{ readings, today, readingAfter_d }: GatherInput,
	loads: TellingFacts['loads']
): IsoDate | null {
	const expected = loads.flatMap(({ expectedFrom }) => expectedFrom ?? []).toSorted();
	return readingDueOn({
		readings,
		expectedFrom: expected[0] ?? null,
		isWithheld: loads.some(({ status }) => status === 'withheld'),
		after_d: readingAfter_d,
		today
	});
}

function staleSince({ observed }: GatherInput): TellingFacts['stale'] {
	if (observed === null || observed.age_h < STALE_h) return null;
	return { since: observed.on, age_h: observed.age_h };
}
