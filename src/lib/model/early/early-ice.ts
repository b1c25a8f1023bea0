import { winterSpan, type IsoDate } from '../calendar.ts';
import { climateOf, type Climate } from '../climate.ts';
import { scenarios } from '../ensemble/scenarios.ts';
import type { Outlook, OutlookInput } from '../outlook.ts';
import type { SiteWinter } from '../site-winter.ts';
import type { Steps } from '../steps.ts';
import { coolingOf, type Cooling } from './cooling.ts';
import { freezeChances, type FreezeChance } from './freeze-chance.ts';
import {
	earlierFreezeUps,
	freezeThreshold,
	type EarlierFreezeUp,
	type FreezeThreshold
} from './freeze-threshold.ts';
import { growthSteps, type EarlyGrowth } from './growth.ts';
import { pastBecause, type EarlyPhase, type PastBecause } from './phase.ts';
import { isFirstLoad } from './first-loads.ts';
import { nowOf } from './now-of.ts';
import { shareBelow } from './share-below.ts';
import { WIND_BREAKS_BELOW_m, windyDays, type WindyDay } from './wind.ts';

/** Futures that a freeze-up is looked for in. */
const FUTURES = 80;
const SEED = 2_718;

/** What can be said of a site from its first cold nights to its first loads. */
export interface EarlyIce {
	phase: EarlyPhase;
	/** `null` unless the early season is past. */
	pastBecause: PastBecause | null;
	/** The last day that is known, and the day from which what comes is told. */
	asOf: IsoDate;
	now: IsoDate;
	/** `null` without any temperature of the winter. */
	cooling: Cooling | null;
	/** `null` once freeze-up is recorded, on a river, and without weather. */
	freezing: Freezing | null;
	/** `null` before freeze-up, after the early season, and where the weather does not reach. */
	growth: EarlyGrowth | null;
	wind: {
		/** Whether any wind to come is known. */
		isForecast: boolean;
		/** Whether any that has blown is. */
		isObserved: boolean;
		days: WindyDay[];
	};
}

/** When the site may freeze over. */
export interface Freezing {
	threshold: FreezeThreshold;
	earlier: EarlierFreezeUp[];
	/** From the last known day to the winter's end. */
	chances: FreezeChance[];
	climate: Climate | null;
}

/** An outlook told to the winter's end, and what else is known of the site. */
export interface EarlyIceInput {
	input: OutlookInput;
	/** `null` before freeze-up. */
	outlook: Outlook | null;
	/** Earlier winters as they were recorded. */
	records: readonly SiteWinter[];
}

/** All of it, in steps: what the forecast's snow does takes a run of its own. */
export function* earlyIceSteps({ input, outlook, records }: EarlyIceInput): Steps<EarlyIce> {
	const { asOf, lake } = input;
	const now = nowOf(input);
	const known = knownOf(input);
	const cooling = coolingOf(
		known.filter(({ source }) => source === 'observed'),
		lake
	);
	const told = { asOf, now, cooling };
	const isFrozen = outlook !== null;
	const firstLoads = outlook?.forecast.loads.filter((load) => isFirstLoad(load, input.loads)) ?? [];
	const why = outlook ? pastBecause(outlook.forecast, firstLoads, iceOutOn(input)) : null;
	const growth =
		outlook !== null && outlook.today !== null && why === null
			? yield* growthSteps(input, outlook, firstLoads)
			: null;
	const freezing = !isFrozen && cooling !== null ? freezingOf(input, records) : null;
	return {
		phase: phaseOf(isFrozen, why !== null, growth !== null, cooling !== null),
		pastBecause: why,
		...told,
		freezing,
		growth,
		wind: why === null ? windOf(input, outlook) : { isForecast: false, isObserved: false, days: [] }
	};
}

/** Recorded, and known by now. */
function iceOutOn({ record, since, asOf }: OutlookInput): IsoDate | null {
	if (record.iceOutOn !== null && record.iceOutOn <= asOf) return record.iceOutOn;
	return since?.iceOutOn ?? null;
}

function phaseOf(isFrozen: boolean, isPast: boolean, grows: boolean, hasAir: boolean): EarlyPhase {
	if (isPast) return 'past';
	if (isFrozen) return grows ? 'growing' : 'unknown';
	return hasAir ? 'beforeFreezeUp' : 'unknown';
}

/** Of this winter: what was observed by the day of asking, and what is forecast after it. */
function knownOf({ weather, asOf, record }: OutlookInput) {
	const [first] = winterSpan(record.winter);
	return weather.filter(({ on, source }) => on >= first && (on <= asOf || source === 'forecast'));
}

/** Nothing is told of a river: its water is mixed and brings heat of its own. */
function freezingOf(input: OutlookInput, records: readonly SiteWinter[]): Freezing | null {
	const { lake, asOf, until, past = [] } = input;
	if (lake.water === 'river' || until <= asOf) return null;
	const known = knownOf(input);
	const futures = scenarios({
		lake,
		known,
		past,
		asOf,
		until,
		issuedOn: input.forecastIssuedOn ?? null,
		count: FUTURES,
		seed: SEED
	});
	const from = futures[0]?.days[0]?.on ?? until;
	const earlier = earlierFreezeUps(records, past, lake);
	const threshold = freezeThreshold(earlier);
	const before = known.filter(({ on }) => on < from);
	return {
		threshold,
		earlier,
		chances: freezeChances({ lake, known: before, futures, threshold }),
		climate: climateOf(futures)
	};
}

/** Of days of ice in the record, and of all days to come. */
function windOf(input: OutlookInput, outlook: Outlook | null): EarlyIce['wind'] {
	const { asOf } = input;
	const days = new Map((outlook?.forecast.days ?? []).map((day) => [day.on, day.total_m]));
	const pThinOn = (on: IsoDate): number | null => {
		const total_m = days.get(on);
		return total_m ? shareBelow(total_m, WIND_BREAKS_BELOW_m) : null;
	};
	const known = knownOf(input).filter(({ on }) => on > asOf || days.has(on));
	return {
		isForecast: known.some((day) => day.on > asOf && day.wind_m_s !== null),
		isObserved: known.some((day) => day.on <= asOf && day.wind_m_s !== null),
		days: windyDays(known, pThinOn)
	};
}
