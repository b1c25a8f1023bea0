import { effective_m } from '#lib/model/bearing.ts';
import { trackCautions } from '#lib/model/tracks/track-cautions.ts';
import { parkedRules } from '#lib/model/parked/rules.ts';
import { COLD_WEEK_d, COLDER_K, type WhatChanges } from '#lib/server/services/what-changes.ts';
import type { LakeView } from '#lib/server/services/lake-view.ts';
import type { GoingOn } from '#lib/server/services/going-on.ts';
import type { Words } from '#lib/model/words.ts';
import { dayRuleOf } from '#lib/ui/charts/strip-data.ts';
import { lakePage } from '../lake-page.ts';
import { upkeepOf } from '../upkeep.ts';

/** What the page of this question shows. */
export function goingOnPage({ view, changes }: GoingOn, words: Words) {
	const { ice, ...head } = lakePage(view);
	return {
		...head,
		upkeep: upkeepOf(view),
		meanDepth_m: view.lake.meanDepth_m,
		drivenBound_m: drivenBound_m(view),
		parkedRules: parkedRules(words),
		/** None where nothing was cleared. */
		trackRules: ice?.cautions.some(({ code }) => code === 'clearedIce') ? trackCautions(null) : [],
		changes: changes && { ...changes, colder_K: COLDER_K, coldDays: COLD_WEEK_d },
		ice: ice && {
			day: ice.day,
			strip: ice.strip,
			readings: ice.readings,
			snowKnown: ice.snowKnown,
			climate: ice.climate,
			cautions: ice.cautions,
			whiteShare: ice.day && whiteShare(ice.day),
			to: ice.coming.at(-1)?.on ?? view.asOf,
			loads: ice.loads.map((load) => ({
				...load,
				parked_h: view.loads.find(({ id }) => id === load.id)?.parked_h ?? 0,
				met_percent: metOn(view, load.id)
			}))
		}
	};
}

export type GoingOnPage = ReturnType<typeof goingOnPage>;
export type GoingOnIce = NonNullable<GoingOnPage['ice']>;
export type GoingOnLoad = GoingOnIce['loads'][number];
export type GoingOnChanges = WhatChanges & { colder_K: number; coldDays: number };

/**
 * Chance on the day of asking that a load's requirement is met, rounded down; `null` where a rule of
 * that day asks for more than the chances go by.
 */
function metOn({ outlook, asOf }: LakeView, loadId: string): number | null {
	const load = outlook?.forecast.loads.find(({ id }) => id === loadId);
	if (load === undefined || dayRuleOf(load) !== null) return null;
	const met = load.days.find(({ on }) => on === asOf)?.pThickness ?? null;
	return met === null ? null : Math.floor(100 * met);
}

/**
 * The ice that the wave of a vehicle is told for: the least that any load is held against, which is the
 * lower bound of effective thickness at the thinnest of five spots. The wave is slower the thinner the
 * ice, and a way leads over thin spots too; that white ice is as stiff as half as much clear ice is our
 * careful choice, no source. `null` where the day is not known.
 */
function drivenBound_m({ outlook }: LakeView): number | null {
	const bounds = outlook?.forecast.loads.flatMap(({ bound_m }) => bound_m ?? []) ?? [];
	return bounds.length === 0 ? null : Math.min(...bounds);
}

/** How much of the sheet is white, and what it would count as were it all clear. */
function whiteShare({ clear_m, white_m }: { clear_m: number; white_m: number }) {
	const total_m = clear_m + white_m;
	return total_m <= 0
		? null
		: { share: white_m / total_m, total_m, effective_m: effective_m({ clear_m, white_m }) };
}
