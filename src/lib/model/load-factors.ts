import {
	coldSnapRule,
	currentRule,
	parkedRule,
	warmSpellRule,
	wetCrackRule
} from './applied-rules.ts';
import { COLD_SNAP_FALL_K, THIN_SNOW_m } from './cold-snap.ts';
import type { AppliedRule } from './forecast.ts';
import type { LoadCase } from './load-case.ts';
import type { Conditions } from './requirement.ts';
import type { Words } from './words.ts';

const PARKED_FACTOR = 2; // [Smith2004] [R]
const PARKED_LONG_h = 2; // [Smith2004] [R]
const CURRENT_FACTOR = 1.15; // river against lake in the older Canadian table [R2], [C]
export const WARM_SPELL_FACTOR = 2; // Minnesota DNR 2013 [R2]
const WET_CRACK_FACTORS = { 0: 1, 1: 0.5, 2: 0.25 } as const; // on the load [M-hi]
const COLD_SNAP_FACTOR = 0.5; // on the load [M-med]

/** What makes a load ask for more than a moving one on quiet, cold ice. */
export interface Factors {
	/** Load factors, under the root of Gold's formula. */
	onLoad: number;
	/** On chart and formula, for standing long: creep has a rule of its own. */
	forStanding: number;
	/** On every thickness. */
	onThickness: number;
}

/** Of the load and its way. */
export function wayFactors(load: LoadCase, isRiver: boolean): Factors {
	return {
		onLoad: WET_CRACK_FACTORS[load.wetCracks],
		forStanding: isParkedLong(load) ? PARKED_FACTOR : 1,
		onThickness: currentFactor(load.current || isRiver)
	};
}

/** On every thickness over moving water. */
export function currentFactor(isMoving: boolean): number {
	return isMoving ? CURRENT_FACTOR : 1;
}

/** The same with those of the day. */
export function dayFactors(way: Factors, { isColdSnap, isWarmSpell }: Conditions): Factors {
	return {
		...way,
		onLoad: way.onLoad * (isColdSnap ? COLD_SNAP_FACTOR : 1),
		onThickness: way.onThickness * (isWarmSpell ? WARM_SPELL_FACTOR : 1)
	};
}

/** Each factor in words. */
export function factorRules(load: LoadCase, conditions: Conditions, words: Words): AppliedRule[] {
	const { isRiver, isWarmSpell, isColdSnap } = conditions;
	const rules: AppliedRule[] = [];
	if (isParkedLong(load)) rules.push(parkedRule(PARKED_LONG_h));
	if (load.current || isRiver) rules.push(currentRule(isRiver));
	if (load.wetCracks !== 0) rules.push(wetCrackRule(load.wetCracks));
	if (isWarmSpell) rules.push(warmSpellRule());
	if (isColdSnap) rules.push(coldSnapRule(COLD_SNAP_FALL_K, THIN_SNOW_m, words));
	return rules;
}

function isParkedLong(load: LoadCase): boolean {
	return load.parked_h > PARKED_LONG_h;
}
