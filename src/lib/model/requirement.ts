import {
	chartRule,
	coldSnapRule,
	currentRule,
	engineerRule,
	goldRule,
	leastRule,
	parkedRule,
	warmSpellRule,
	wetCrackRule
} from './applied-rules.ts';
import { goldThickness_m } from './bearing.ts';
import { COLD_SNAP_FALL_K, THIN_SNOW_m } from './cold-snap.ts';
import type { AppliedRule } from './forecast.ts';
import {
	ENGINEER_ABOVE_kg,
	chartMinimum,
	type ChartMinimum,
	type ChartSet,
	type LoadCase
} from './load-case.ts';
import { METRIC_WORDS, type Words } from './words.ts';

const PARKED_FACTOR = 2; // [Smith2004] [R]
const PARKED_LONG_h = 2; // [Smith2004] [R]
const CURRENT_FACTOR = 1.15; // river against lake in the older Canadian table [R2], [C]
const WARM_SPELL_FACTOR = 2; // Minnesota DNR 2013 [R2]
const WET_CRACK_FACTORS = { 0: 1, 1: 0.5, 2: 0.25 } as const; // on the load [M-hi]
const COLD_SNAP_FACTOR = 0.5; // on the load [M-med]
const ALONE_FACTOR = 2; // on Gold's thickness, for a parked load judged alone [Smith2004] [R]

/** What the site and the day add to a load's own circumstances. */
export interface Conditions {
	isRiver: boolean;
	isWarmSpell: boolean;
	isColdSnap: boolean;
}

export const ORDINARY: Conditions = { isRiver: false, isWarmSpell: false, isColdSnap: false };

export interface Requirement {
	/** Effective thickness asked for with everything in; `null` when only an engineer can say. */
	required_m: number | null;
	/** The same without the day's warm spell and cold snap. */
	base_m: number | null;
	rules: AppliedRule[];
}

/**
 * Effective thickness that a load asks for under a set of charts: the larger of the published
 * minimum and Gold's formula, with every factor of its way and of the day.
 *
 *   h = max(h_chart, √(P / (A · Π load factors))) · Π thickness factors
 *
 * A = 3.5 kg/cm². Above 5 t and for a vehicle parked with its shelter nothing is stated.
 * Source: [Gold1971], [Smith2004], charts in `data/charts`.
 */
export function requirement(
	load: LoadCase,
	minimums: readonly ChartMinimum[],
	set: ChartSet,
	conditions: Conditions = ORDINARY,
	words: Words = METRIC_WORDS
): Requirement {
	const row = chartMinimum(minimums, set, chartUse(load));
	if (row.thickness_m === null || needsEngineer(load)) return forAnEngineer(load, words);
	const chart_m = Math.max(row.thickness_m, groupMinimum_m(load, minimums, set));
	const way = wayFactors(load, conditions.isRiver);
	const day = dayFactors(conditions);
	const asked_m = (loadFactor: number, thicknessFactor: number): number =>
		Math.max(chart_m, goldThickness_m(load.mass_kg, loadFactor)) * thicknessFactor;
	const base = load.use === null ? leastRule : chartRule;
	return {
		required_m: asked_m(way.onLoad * day.onLoad, way.onThickness * day.onThickness),
		base_m: asked_m(way.onLoad, way.onThickness),
		rules: [
			base(row, chart_m, words),
			goldRule(load, goldThickness_m(load.mass_kg), words),
			...wayRules(load, conditions.isRiver),
			...dayRules(conditions, words)
		]
	};
}

function needsEngineer(load: LoadCase): boolean {
	return load.mass_kg > ENGINEER_ABOVE_kg || load.use === 'truckWithShelter';
}

function forAnEngineer(load: LoadCase, words: Words): Requirement {
	const alone_m =
		load.use === 'truckWithShelter' ? ALONE_FACTOR * goldThickness_m(load.mass_kg) : null;
	const rule = engineerRule(load, ENGINEER_ABOVE_kg, alone_m, words);
	return { required_m: null, base_m: null, rules: [rule] };
}

/** A load without a row of its own is held against the least that any chart asks. */
function chartUse(load: LoadCase): NonNullable<LoadCase['use']> {
	if (load.use === null) return 'onFoot';
	return load.group && load.use === 'onFoot' ? 'group' : load.use;
}

/** A group with machines asks at least what a group on foot does. */
function groupMinimum_m(load: LoadCase, minimums: readonly ChartMinimum[], set: ChartSet): number {
	return load.group ? (chartMinimum(minimums, set, 'group').thickness_m ?? 0) : 0;
}

interface Factors {
	onLoad: number;
	onThickness: number;
}

function wayFactors(load: LoadCase, isRiver: boolean): Factors {
	return {
		onLoad: WET_CRACK_FACTORS[load.wetCracks],
		onThickness:
			(isParkedLong(load) ? PARKED_FACTOR : 1) * (load.current || isRiver ? CURRENT_FACTOR : 1)
	};
}

function dayFactors(conditions: Conditions): Factors {
	return {
		onLoad: conditions.isColdSnap ? COLD_SNAP_FACTOR : 1,
		onThickness: conditions.isWarmSpell ? WARM_SPELL_FACTOR : 1
	};
}

function wayRules(load: LoadCase, isRiver: boolean): AppliedRule[] {
	const rules: AppliedRule[] = [];
	if (isParkedLong(load)) rules.push(parkedRule(PARKED_LONG_h));
	if (load.current || isRiver) rules.push(currentRule(isRiver));
	if (load.wetCracks !== 0) rules.push(wetCrackRule(load.wetCracks));
	return rules;
}

function dayRules(conditions: Conditions, words: Words): AppliedRule[] {
	const rules: AppliedRule[] = [];
	if (conditions.isWarmSpell) rules.push(warmSpellRule());
	if (conditions.isColdSnap) rules.push(coldSnapRule(COLD_SNAP_FALL_K, THIN_SNOW_m, words));
	return rules;
}

function isParkedLong(load: LoadCase): boolean {
	return load.parked_h > PARKED_LONG_h;
}
