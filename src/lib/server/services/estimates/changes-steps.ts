import { whatIfSteps, type Change } from '#lib/model/ensemble/what-if.ts';
import type { Forecast, ForecastLoad } from '#lib/model/forecast.ts';
import { FRESH_kg_m3 } from '#lib/model/more-snow.ts';
import type { OutlookInput } from '#lib/model/outlook.ts';
import type { Steps } from '#lib/model/steps.ts';

/** Enough to tell days by: the same draws with and without a change, so that only it makes the difference. */
const MEMBERS = 100;
/** How much colder the week is that is tried. */
export const COLDER_K = 5;
export const COLD_WEEK_d = 7;
/** Snow past what the ice can float: some centimetres of slush. */
const FLOODING_kg_m2 = 20;
/** A heavier fall is too rare to be worth trying: some 40 cm at once. */
const HEAVIEST_FALL_kg_m2 = 60;

export type TriedId = 'cleared' | 'coldWeek' | 'flood';

/** The dates of a load, as they are or would be. */
export type TriedLoad = Pick<ForecastLoad, 'id' | 'expectedFrom' | 'likelyFrom' | 'until'>;

/** What some ordinary changes from the day of asking on would do to the dates. */
export interface WhatChanges {
	asIs: TriedLoad[];
	tried: { id: TriedId; loads: TriedLoad[] }[];
	/** Fresh snow that makes the flood; `null` where it would take more than ever falls at once. */
	floodSnow_m: number | null;
}

const NOTHING: Change = { snowFactor: 1, warming_K: 0, extraLoad: null };

/** `floodsWith_kg_m2` is the snow that the ice can float further. `null` where nothing is estimated. */
export function* changesSteps(
	input: OutlookInput,
	floodsWith_kg_m2: number | null
): Steps<WhatChanges | null> {
	const fall_kg_m2 = (floodsWith_kg_m2 ?? Infinity) + FLOODING_kg_m2;
	const isFlood = fall_kg_m2 <= HEAVIEST_FALL_kg_m2;
	const asIs = yield* whatIfSteps(input, NOTHING, MEMBERS);
	if (asIs === null) return null;
	const tried: WhatChanges['tried'] = [];
	for (const [id, change] of changes(isFlood ? fall_kg_m2 : null)) {
		const answer = yield* whatIfSteps(input, { ...NOTHING, ...change }, MEMBERS);
		if (answer !== null) tried.push({ id, loads: datesOf(answer) });
	}
	return { asIs: datesOf(asIs), tried, floodSnow_m: isFlood ? fall_kg_m2 / FRESH_kg_m3 : null };
}

function changes(fall_kg_m2: number | null): [TriedId, Partial<Change>][] {
	return [
		['cleared', { snowFactor: 0 }],
		['coldWeek', { warming_K: -COLDER_K, warmingDays: COLD_WEEK_d }],
		...(fall_kg_m2 === null
			? []
			: [['flood', { snowfall_kg_m2: fall_kg_m2 }] as [TriedId, Partial<Change>]])
	];
}

function datesOf({ loads }: Forecast): TriedLoad[] {
	return loads.map(({ id, expectedFrom, likelyFrom, until }) => ({
		id,
		expectedFrom,
		likelyFrom,
		until
	}));
}
