import type { DrilledDay } from './drilled-day.ts';
import type { ForecastDay, ForecastLoad } from './forecast.ts';
import type { ChartMinimum, ChartSet, LoadCase } from './load-case.ts';
import { requirement, type Conditions } from './requirement.ts';
import type { SiteSeason } from './site-season.ts';
import { bound_m, statusOf } from './status.ts';
import type { WarmDay } from './warm-day.ts';
import type { Words } from './words.ts';

export interface LoadAnswerInput {
	minimums: readonly ChartMinimum[];
	chartSet: ChartSet;
	conditions: Conditions;
	site: SiteSeason;
	asOf: string;
	warm: WarmDay | null;
	drilled: readonly DrilledDay[];
	days: readonly ForecastDay[];
	words: Words;
}

/** One load's part of the answer. Dates and probabilities are not estimated before the ensemble. */
export function loadAnswer(load: LoadCase, input: LoadAnswerInput): ForecastLoad {
	const { minimums, chartSet, conditions, words, asOf, site } = input;
	const asked = requirement(load, minimums, chartSet, conditions, words);
	const other = requirement(load, minimums, otherSet(chartSet), conditions, words);
	const today = site.days.find(({ day }) => day.on === asOf);
	const { status, reason } = statusOf({
		load,
		requirement: asked,
		season: site.days.filter(({ day }) => day.on <= asOf),
		asOf,
		warm: input.warm,
		drilled: input.drilled,
		iceOutOn: site.iceOutOn,
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
		expectedFrom: null,
		likelyFrom: null,
		until: null,
		days: input.days.map(({ on }) => ({ on, pThickness: null, pThaw: null }))
	};
}

function otherSet(set: ChartSet): ChartSet {
	return set === 'strict' ? 'common' : 'strict';
}
