import type { IsoDate } from './calendar.ts';
import type { DrilledDay } from './drilled-day.ts';
import { loadDates } from './ensemble/dates.ts';
import type { ForecastLoad } from './forecast.ts';
import type { ChartMinimum, ChartSet, LoadCase } from './load-case.ts';
import { loadDays } from './load-days.ts';
import { requirement, type Conditions } from './requirement.ts';
import { bound_m, isSnowKnown } from './site-day.ts';
import type { SiteEstimate } from './site-estimate.ts';
import { statusOf } from './status.ts';
import type { WarmDay } from './warm-day.ts';
import type { Words } from './words.ts';

export interface LoadAnswerInput {
	minimums: readonly ChartMinimum[];
	chartSet: ChartSet;
	conditions: Conditions;
	estimate: SiteEstimate;
	iceOutOn: IsoDate | null;
	asOf: IsoDate;
	warm: WarmDay | null;
	drilled: readonly DrilledDay[];
	/** The answer's days. */
	dates: readonly IsoDate[];
	pThaw: ReadonlyMap<IsoDate, number>;
	words: Words;
}

/** One load's part of the answer: status, dates and probabilities, kept apart. */
export function loadAnswer(load: LoadCase, input: LoadAnswerInput): ForecastLoad {
	const { minimums, chartSet, conditions, words, asOf, estimate } = input;
	const asked = requirement(load, minimums, chartSet, conditions, words);
	const other = requirement(load, minimums, otherSet(chartSet), conditions, words);
	const today = estimate.known.find(({ day }) => day.on === asOf);
	const days = loadDays(load, asked.base_m, input.dates, estimate, input.pThaw);
	const { status, reason } = statusOf({
		load,
		requirement: asked,
		season: estimate.known.filter(({ day }) => day.on <= asOf),
		asOf,
		warm: input.warm,
		drilled: input.drilled,
		iceOutOn: input.iceOutOn,
		words
	});
	return {
		id: load.id,
		name: load.name,
		mass_kg: load.mass_kg,
		required_m: asked.required_m,
		requiredOther_m: other.required_m,
		bound_m: today ? bound_m(today, load) : null,
		rules: asked.rules,
		status,
		reason,
		...(isSnowKnown(estimate.known, asOf) ? loadDates(days) : NO_DATES),
		days
	};
}

/** Where nobody recorded the snow no day is named: the usual snow is no ground to expect anything on. */
const NO_DATES = { expectedFrom: null, likelyFrom: null, until: null };

function otherSet(set: ChartSet): ChartSet {
	return set === 'strict' ? 'common' : 'strict';
}
