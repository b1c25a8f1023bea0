import { growth_m_d, type AnchorStep } from './anchor-steps.ts';
import { askSteps, type Asked, type AskedInput } from './asked.ts';
import type { IsoDate } from './calendar.ts';
import { climateOf, type Climate } from './climate.ts';
import { cautionsFor } from './cautions.ts';
import { thawChance } from './ensemble/thaw-chance.ts';
import { drilledDays, type DrilledDay } from './drilled-day.ts';
import { forecastDays } from './forecast-days.ts';
import type { Caution, Forecast } from './forecast.ts';
import { loadAnswer } from './load-answer.ts';
import type { ChartMinimum, ChartSet, LoadCase } from './load-case.ts';
import { leavingOf, type Leaving } from './leaving/leaving.ts';
import { isAtWeakSpot } from './open-part.ts';
import { LASTS_AMPLE_d } from './reached.ts';
import type { Reading } from './reading.ts';
import type { SeasonDay } from './season.ts';
import type { Conditions } from './requirement.ts';
import { isSnowKnown } from './site-day.ts';
import { isCleared } from './cleared-ice.ts';
import { siteSeason } from './site-season.ts';
import { spellText } from './spell-text.ts';
import { finish, type Steps } from './steps.ts';
import type { WarmState } from './warmth.ts';
import { iceOutDates } from './ice-out-dates.ts';
import { memoryText } from './memory-text.ts';

export interface OutlookInput extends AskedInput {
	lakeId: string;
	site: string;
	loads: readonly LoadCase[];
	minimums: readonly ChartMinimum[];
	chartSet: ChartSet;
	/**
	 * Readings of the ice that a track was made on: like those at weak spots they move the estimate, and
	 * no status rests on them.
	 */
	drilledElsewhere?: readonly string[];
}

export interface Outlook {
	forecast: Forecast;
	/**
	 * State on `asOf` with the ensemble's column; `null` past the known weather. From a recorded ice-out
	 * on it is open water.
	 */
	today: SeasonDay | null;
	/** Change of the estimated whole thickness over the last day, apart from what readings moved. */
	growth_m_d: number | null;
	/** On `asOf`, or on the last day before it that is known. */
	snowKnown: boolean;
	/** Days without a temperature since freeze-up or the last hole. */
	gapDays: number;
	anchors: AnchorStep[];
	warmSpell: { state: WarmState; since: IsoDate | null; text: string | null };
	/** Further snow, as dense as today's, that floods the sheet. */
	floodsWithMoreSnow_m: number | null;
	/** What days past the forecast go by; `null` where none are told. */
	climate: Climate | null;
}

/**
 * The whole answer for a site on a day: its days, its loads and its cautions.
 *
 * `null` when no freeze-up is recorded or `asOf` lies before it.
 */
export function outlook(input: OutlookInput): Outlook | null {
	return finish(outlookSteps(input));
}

/** The same in steps. */
export function* outlookSteps(input: OutlookInput): Steps<Outlook | null> {
	const site = siteSeason(input);
	if (site === null) return null;
	const asked = yield* askSteps(site, input);
	const { estimate, today, warm } = asked;
	return {
		forecast: forecastOf(asked, input),
		today: today?.day ?? null,
		growth_m_d: growth_m_d([...estimate.days.values()], input.asOf),
		snowKnown: isSnowKnown(estimate.known, input.asOf),
		gapDays: today?.gapDays ?? 0,
		anchors: estimate.anchors,
		warmSpell: {
			state: warm?.state ?? 'none',
			since: warm?.since ?? null,
			text: warm === null ? null : spellText(warm, asked.words)
		},
		floodsWithMoreSnow_m: asked.floodsWith_m,
		climate: climateOf(estimate.scenarios)
	};
}

function forecastOf(asked: Asked, input: OutlookInput): Forecast {
	const { site, estimate, warm, words, since } = asked;
	const iceOutOn = site.iceOutOn ?? since?.iceOutOn ?? null;
	const days = forecastDays(site.days, estimate, site.freezeUp.first, input.until);
	const forLoads = {
		minimums: input.minimums,
		chartSet: input.chartSet,
		conditions: conditionsOf(asked, input),
		estimate,
		iceOutOn,
		asOf: input.asOf,
		warm,
		drilled: drilledOf(asked, input),
		dates: days.map(({ on }) => on),
		pThaw: pThawOf(asked, input),
		words
	};
	const loads = input.loads.map((load) => loadAnswer(load, forLoads));
	const iceOut = iceOutDates(iceOutOn, estimate.iceOut);
	const leaving = leavingOf({ asked, input, days, loads, iceOut });
	return {
		lake: input.lakeId,
		site: input.site,
		winter: input.record.winter,
		asOf: input.asOf,
		days,
		loads,
		iceOut,
		leaving,
		memoryText: memoryText(site, input),
		cautions: cautionsOf(asked, input, leaving)
	};
}

/** Each future counts for the members that go by it, which differ by one at most. */
function pThawOf(
	{ site, heard, estimate, warm }: Asked,
	{ lake, asOf }: OutlookInput
): Map<IsoDate, number> {
	const { days, hasHours } = site;
	const chances = thawChance({
		days,
		readings: heard,
		hasHours,
		scenarios: estimate.scenarios,
		latitude: lake.latitude,
		from: (estimate.scenarios[0]?.days[0]?.on ?? '') > asOf ? warm : null
	});
	return new Map(chances.map(({ on, pThaw }) => [on, pThaw]));
}

/** A core that is wet or candled withholds; only a spell of warm hours doubles. */
function conditionsOf(
	{ warm, hasColdSnap }: Asked,
	{ lake }: OutlookInput
): Omit<Conditions, 'snow_kg_m2'> {
	return {
		isRiver: lake.water === 'river',
		isWarmSpell: warm !== null && warm.state !== 'none' && warm.lastWarmOn !== null,
		isColdSnap: hasColdSnap
	};
}

function drilledOf(
	{ site, spells, setAside, since }: Asked,
	{ asOf, drilledElsewhere, weakSpots }: OutlookInput
): DrilledDay[] {
	const { readings, seasonWith } = site;
	const isElsewhere = (reading: Reading) =>
		isAtWeakSpot(reading, weakSpots) || drilledElsewhere?.includes(reading.id) === true;
	return drilledDays({
		asOf,
		readings: readings.map((reading) =>
			isElsewhere(reading) ? { ...reading, secondHand: true } : reading
		),
		doubtful: setAside,
		warm: spells,
		since,
		lookBack_d: LASTS_AMPLE_d,
		seasonBy: (on) =>
			seasonWith(
				readings.filter((reading) => reading.on <= on),
				asOf
			)
	});
}

function cautionsOf(
	asked: Asked,
	{ lake, asOf }: OutlookInput,
	leaving: Leaving | null
): Caution[] {
	return cautionsFor({
		lake,
		asOf,
		since: asked.since,
		today: asked.today,
		warm: asked.warm,
		isColdSnap: asked.hasColdSnap,
		floodsWith_m: asked.floodsWith_m,
		slushFrozenBy: leaving?.slush?.frozenBy ?? null,
		lastWeatherOn: asked.site.lastWeatherOn,
		readings: asked.site.readings,
		doubtful: new Set([...asked.setAside, ...asked.estimate.askedAbout]),
		iceOutOn: asked.site.iceOutOn ?? asked.since?.iceOutOn ?? null,
		isCleared: isCleared(asked.site.events),
		mayBeOpenUntil: asked.site.mayBeOpen ? asked.site.freezeUp.last : null,
		words: asked.words
	});
}
