import type { IsoDate } from '../calendar.ts';
import type { LakeFacts } from '../lake.ts';
import type { Parameters } from '../parameters.ts';
import type { Reading } from '../reading.ts';
import { applyEvent, isHeldOpen } from '../site-events.ts';
import { openSite } from '../site-ice.ts';
import type { SiteEvent } from '../site-winter.ts';
import { clearByPlan, isPlanned, type ClearingPlan } from '../tracks/clearing-plan.ts';
import type { DaySource, WeatherDay } from '../weather.ts';
import { ensembleDays } from './forcings.ts';
import { begin, copyEnsemble, type Ensemble } from './begin.ts';
import { takeCores } from './cores.ts';
import { squareWithFreezeUp } from './freeze-over.ts';
import { openMembers, type Members } from './members.ts';
import type { SiteMemory } from './memory.ts';
import { eachMember, passDay } from './pass.ts';
import { recalibrate, type Recalibration } from './recalibrate.ts';
import type { ScenarioWeather } from './scenarios.ts';
import { drill, emptyHoles, type Holes, type Spots } from './spots.ts';
import { bendParameters, type Traits } from './traits.ts';

export interface EnsembleInput {
	lake: LakeFacts;
	/** First day of ice, or the first it may have been. */
	freezeUpOn: IsoDate;
	/** The last day it may have been; `null` when it is known. */
	freezeUpBy: IsoDate | null;
	until: IsoDate;
	/** Observed, sorted, each day once. */
	weather: readonly WeatherDay[];
	/** What may follow; without any the ensemble ends with the known weather. */
	scenarios: readonly ScenarioWeather[];
	events: readonly SiteEvent[];
	/** Clearing that is only thought of. */
	plan?: ClearingPlan;
	readings: readonly Reading[];
	memory: SiteMemory | null;
	/** Traits of the site instead of drawn ones, to compare winters member by member. */
	siteTraits?: readonly Float64Array[];
	members: number;
	seed: number;
	parameters?: Parameters;
	/** Goes on from here; the days to this one are not called back again. */
	start?: EnsembleStart;
}

/** The ensemble on one day, at its start and with its readings taken in. Valid during the call. */
export interface EnsembleDay {
	readonly on: IsoDate;
	readonly source: DaySource;
	readonly members: Members;
	readonly traits: Traits;
	/** What a hole at each member's own random spot would show. */
	readonly holes: Holes;
	/** Scenario of each member; all zero while the weather is known. */
	readonly scenarioOf: Uint16Array;
	/** The same day before its readings were taken in; `null` on a day without. */
	readonly before: Holes | null;
	/** The same with only those taken in that nobody else told; `null` on a day without told ones. */
	readonly beforeTold: Holes | null;
	readonly recalibrations: readonly Recalibration[];
	/** This day, kept to go on from. */
	readonly keep: () => EnsembleStart;
}

/** An ensemble at the start of a day, to go on from. */
export interface EnsembleStart {
	readonly on: IsoDate;
	readonly ensemble: Ensemble;
}

/**
 * Many winters of one site at once: each member has its own parameters, pace, freeze-up where that is
 * uncertain, and future. Readings pull the members to what was measured, in their order; those of a day
 * that somebody else told come after the others.
 *
 * The same input gives the same answer. Calls back for each day from the first possible freeze-up.
 */
export function runEnsemble(input: EnsembleInput, onDay: (day: EnsembleDay) => void): void {
	for (const day of ensembleRun(input)) onDay(day);
}

/** The same, a day at a time; each is valid until the next is asked for. */
export function* ensembleRun(input: EnsembleInput): Generator<EnsembleDay, void, void> {
	const days = ensembleDays(input);
	const { start, seed } = input;
	const ensemble = start ? copyEnsemble(start.ensemble, seed) : begin(input);
	const drilling = drillingOf(input.members, ensemble.spots);
	for (const [index, day] of days.entries()) {
		if (start !== undefined && day.on <= start.on) {
			if (day.on === start.on && !isHeldOpen(input.events, day.on)) passDay(ensemble, day, index);
			continue;
		}
		const isOpen = beginDay(ensemble, input, day.on);
		const today = isOpen ? [] : input.readings.filter(({ on }) => on === day.on);
		const before = today.length > 0 ? drilling.before(ensemble.members) : null;
		const told = today.filter(({ secondHand }) => secondHand);
		const seen = takeIn(
			ensemble,
			today.filter(({ secondHand }) => !secondHand),
			index
		);
		const beforeTold = told.length > 0 ? drilling.beforeTold(ensemble.members) : null;
		const recalibrations = [...seen, ...takeIn(ensemble, told, index)];
		if (today.length > 0) {
			takeCores(ensemble.members, today);
			squareWithFreezeUp(ensemble, today, index);
			ensemble.bent = bendParameters(ensemble.base, ensemble.traits);
		}
		const { members, traits, scenarioOf } = ensemble;
		const holes = drilling.now(members);
		yield {
			on: day.on,
			source: day.source,
			members,
			traits,
			holes,
			scenarioOf,
			before,
			beforeTold,
			recalibrations,
			keep: () => ({ on: day.on, ensemble: copyEnsemble(ensemble, seed) })
		};
		if (!isOpen) passDay(ensemble, day, index);
	}
}

function takeIn(ensemble: Ensemble, readings: readonly Reading[], index: number): Recalibration[] {
	return readings.map((reading) => {
		const sinceRead_d = index - ensemble.lastReadIndex;
		const done = recalibrate(reading, sinceRead_d, ensemble, ensemble.random);
		// Only a thickness settles how far the model has drifted since the last one.
		if (done.off !== null) ensemble.lastReadIndex = index;
		return done;
	});
}

/** Keeps the drilled layers in arrays that are made once. */
function drillingOf(count: number, spots: Spots) {
	const intoOwn = () => {
		const holes = emptyHoles(count);
		return (members: Members): Holes => {
			drill(members, spots, holes);
			return holes;
		};
	};
	return { now: intoOwn(), before: intoOwn(), beforeTold: intoOwn() };
}

/** Lets events and what is planned act on all members; true while the site is held open. */
function beginDay(
	ensemble: Ensemble,
	{ events, plan }: Pick<EnsembleInput, 'events' | 'plan'>,
	on: IsoDate
): boolean {
	const today = events.filter((event) => event.on === on);
	if (today.length > 0 || isPlanned(plan, on)) {
		const ice = openSite();
		eachMember(ensemble, ice, (_, parameters) => {
			for (const event of today) applyEvent(ice, event, parameters);
			if (isPlanned(plan, on)) clearByPlan(ice, plan, on);
		});
	}
	const isOpen = isHeldOpen(events, on);
	if (isOpen) Object.assign(ensemble.members, openMembers(ensemble.members.count));
	return isOpen;
}
