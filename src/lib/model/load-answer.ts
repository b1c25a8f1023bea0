import type { IsoDate } from './calendar.ts';
import type { DrilledDay } from './drilled-day.ts';
import { loadDates } from './ensemble/dates.ts';
import type { EstimatedDay } from './ensemble/estimate.ts';
import type { ForecastLoad } from './forecast.ts';
import type { ChartMinimum, ChartSet, LoadCase } from './load-case.ts';
import { loadDays } from './load-days.ts';
import { isEndedBySnow } from './parked/ended-by-snow.ts';
import { afloatUnder, type Afloat, type Standing } from './parked/afloat.ts';
import { snowLoad_kg_m2 } from './parked/snow-load.ts';
import { requirement, type Conditions } from './requirement.ts';
import { bound_m, isSnowKnown, type SiteDay } from './site-day.ts';
import type { SiteEstimate } from './site-estimate.ts';
import { statusOf } from './status.ts';
import type { WarmDay } from './warm-day.ts';
import type { Words } from './words.ts';

export interface LoadAnswerInput {
	minimums: readonly ChartMinimum[];
	chartSet: ChartSet;
	/** The snow of each day comes from the estimate. */
	conditions: Omit<Conditions, 'snow_kg_m2'>;
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
	const { minimums, chartSet, words, asOf, estimate } = input;
	const conditions = { ...input.conditions, snow_kg_m2: snowOn(asOf, estimate) };
	const asked = requirement(load, minimums, chartSet, conditions, words);
	const other = requirement(load, minimums, otherSet(chartSet), conditions, words);
	const today = estimate.known.find(({ day }) => day.on === asOf);
	const daysBy = (base_m: (day: EstimatedDay) => number | null) =>
		loadDays(load, base_m, input.dates, estimate, input.pThaw);
	const under = (snow_kg_m2: number): number | null =>
		requirement(load, minimums, chartSet, { ...conditions, snow_kg_m2 }).base_m;
	const stands = load.parked_h > 0;
	const days = daysBy((day) => (stands ? under(snowLoad_kg_m2(day)) : asked.base_m));
	const bare_m = stands ? under(0) : null;
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
		counted_kg: asked.counted_kg,
		spacing_m: asked.spacing_m,
		required_m: asked.required_m,
		requiredOther_m: other.required_m,
		parts: asked.parts,
		afloat: today
			? afloatOn(today, load, { ...load, ...conditions, mass_kg: asked.counted_kg })
			: null,
		bound_m: today ? bound_m(today, load) : null,
		rules: asked.rules,
		status,
		reason,
		...(isSnowKnown(estimate.known, asOf) ? loadDates(days, asOf) : NO_DATES),
		isEndedBySnow:
			stands &&
			isEndedBySnow(
				days,
				daysBy(() => bare_m),
				asOf
			),
		days
	};
}

/** Where nobody recorded the snow no day is named: the usual snow is no ground to expect anything on. */
const NO_DATES = { expectedFrom: null, likelyFrom: null, until: null };

function snowOn(on: IsoDate, { days }: SiteEstimate): number {
	const day = days.get(on);
	return day === undefined ? 0 : snowLoad_kg_m2(day);
}

/** As what is asked for is: of clear ice as thick as the bound that the load is held against. */
function afloatOn(today: SiteDay, load: LoadCase, standing: Standing): Afloat | null {
	const clear_m = bound_m(today, load);
	return clear_m > 0 ? afloatUnder(standing, { clear_m, white_m: 0 }) : null;
}

function otherSet(set: ChartSet): ChartSet {
	return set === 'strict' ? 'common' : 'strict';
}
