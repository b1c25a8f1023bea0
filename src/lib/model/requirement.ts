import {
	addedRule,
	chartRule,
	engineerRule,
	goldRule,
	leastRule,
	massRule
} from './applied-rules.ts';
import { goldThickness_m } from './bearing.ts';
import { chartAsked, isMachine, type Company } from './chart-asked.ts';
import type { AppliedRule, AskedParts } from './forecast.ts';
import { ENGINEER_ABOVE_kg, type ChartMinimum, type ChartSet, type LoadCase } from './load-case.ts';
import { dayFactors, factorRules, wayFactors, type Factors } from './load-factors.ts';
import { rowByMass } from './mass-row.ts';
import { countedOf, type Counted } from './moving/counted.ts';
import { countedRules } from './moving/rules.ts';
import { floatingThickness_m } from './parked/afloat.ts';
import { floatingRule } from './parked/rules.ts';
import { METRIC_WORDS, type Words } from './words.ts';

const ALONE_FACTOR = 2; // on Gold's thickness, for a parked load judged alone [Smith2004] [R]

/** What the site and the day add to a load's own circumstances. */
export interface Conditions {
	isRiver: boolean;
	isWarmSpell: boolean;
	isColdSnap: boolean;
	/** Snow on the ice, which helps to sink it under what stands there. */
	snow_kg_m2: number;
}

export const ORDINARY: Conditions = {
	isRiver: false,
	isWarmSpell: false,
	isColdSnap: false,
	snow_kg_m2: 0
};

export interface Requirement {
	/** Effective thickness asked for with everything in; `null` when only an engineer can say. */
	required_m: number | null;
	/** The same without the day's warm spell and cold snap. */
	base_m: number | null;
	/** All that bears on the ice at one place. */
	counted_kg: number;
	/** From this distance on the next one counts on its own. */
	spacing_m: number;
	/** What each asks by itself, everything in; `null` when only an engineer can say. */
	parts: AskedParts | null;
	rules: AppliedRule[];
}

/**
 * Effective thickness that a load asks for under a set of charts: the largest of the published minimum,
 * of Gold's formula, and where it stands of what stays above the water, with every factor of its way and
 * of the day.
 *
 *   h = max(max(h_chart, √(P / (A · Π load factors))) · standing factor, h_mass, h_afloat) · Π thickness factors
 *
 * A = 3.5 kg/cm². Above 5 t at one place and for a vehicle parked with its shelter nothing is stated.
 * P as in {@link countedOf}, h_mass as in {@link rowByMass}, h_afloat as in {@link floatingThickness_m}.
 * Source: [Gold1971], [Smith2004], charts in `data/charts`.
 */
export function requirement(
	load: LoadCase,
	minimums: readonly ChartMinimum[],
	set: ChartSet,
	conditions: Conditions = ORDINARY,
	words: Words = METRIC_WORDS
): Requirement {
	const chart = (which: ChartSet, company: Company) => chartAsked(load, minimums, which, company);
	const byMass = (which: ChartSet, added_kg: number) =>
		rowByMass(minimums, which, heaviest_kg(load, added_kg));
	// The strict set says what is apart, so that both sets speak of the same mass.
	const counted = countedOf(load, ({ mass_kg, added_kg }) =>
		Math.max(
			chart('strict', { added_kg, isGroup: load.group }).thickness_m ?? 0,
			byMass('strict', added_kg)?.thickness_m ?? 0,
			goldThickness_m(mass_kg)
		)
	);
	const { mass_kg, added_kg } = counted;
	const at = { added_kg, isGroup: load.group || counted.others === 'together' };
	const { row, thickness_m: chart_m } = chart(set, at);
	const standing = { mass_kg, parked_h: load.parked_h, snow_kg_m2: conditions.snow_kg_m2 };
	const afloat_m = load.parked_h > 0 ? floatingThickness_m(standing) : null;
	if (chart_m === null || needsEngineer(load, mass_kg))
		return forAnEngineer(load, counted, afloat_m, words);
	const way = wayFactors(load, conditions.isRiver);
	const partsWith = (factors: Factors): AskedParts =>
		askedParts(set, factors, {
			strict_m: chart('strict', at).thickness_m,
			common_m: chart('common', at).thickness_m,
			strictByMass_m: byMass('strict', added_kg)?.thickness_m ?? 0,
			commonByMass_m: byMass('common', added_kg)?.thickness_m ?? 0,
			loadedGold_m: goldThickness_m(mass_kg, factors.onLoad),
			afloat_m
		});
	const parts = partsWith(dayFactors(way, conditions));
	return {
		required_m: largest_m(parts, set),
		base_m: largest_m(partsWith(way), set),
		counted_kg: mass_kg,
		spacing_m: counted.spacing_m,
		parts,
		rules: [
			...chartRules(load, row, { chart_m, added_kg }, words),
			...massRules(byMass(set, added_kg), chart_m, words),
			goldRule(mass_kg, goldThickness_m(mass_kg), words),
			...(afloat_m === null ? [] : [floatingRule(afloat_m, load.parked_h, words)]),
			...countedRules(load, counted, words),
			...factorRules(load, conditions, words)
		]
	};
}

interface Bare {
	strict_m: number | null;
	common_m: number | null;
	strictByMass_m: number;
	commonByMass_m: number;
	loadedGold_m: number;
	afloat_m: number | null;
}

function askedParts(set: ChartSet, factors: Factors, bare: Bare): AskedParts {
	const { forStanding, onThickness } = factors;
	const standing = (bare_m: number) => bare_m * forStanding * onThickness;
	const charts = (own_m: number | null, byMass_m: number) =>
		own_m === null ? null : Math.max(standing(own_m), byMass_m * onThickness);
	const parts = {
		strict_m: charts(bare.strict_m, bare.strictByMass_m),
		common_m: charts(bare.common_m, bare.commonByMass_m),
		gold_m: standing(bare.loadedGold_m),
		afloat_m: bare.afloat_m === null ? null : bare.afloat_m * onThickness
	};
	const decides = (['chart', 'gold', 'afloat'] as const).reduce((most, part) =>
		part_m(parts, set, part) > part_m(parts, set, most) ? part : most
	);
	return { ...parts, decides };
}

function largest_m(parts: AskedParts, set: ChartSet): number {
	return part_m(parts, set, parts.decides);
}

function part_m(
	parts: Omit<AskedParts, 'decides'>,
	set: ChartSet,
	part: AskedParts['decides']
): number {
	if (part === 'gold') return parts.gold_m;
	return (part === 'afloat' ? parts.afloat_m : parts[`${set}_m`]) ?? 0;
}

/** The chart as published, and what was made of it. */
function chartRules(
	load: LoadCase,
	row: ChartMinimum,
	{ chart_m, added_kg }: { chart_m: number; added_kg: number },
	words: Words
): AppliedRule[] {
	const row_m = row.thickness_m ?? chart_m;
	const isRaised = isMachine(load.use) && added_kg > 0 && chart_m > row_m;
	const quoted_m = isRaised ? row_m : chart_m;
	return [
		(load.use === null ? leastRule : chartRule)(row, quoted_m, words),
		...(isRaised ? [addedRule(added_kg, chart_m, words)] : [])
	];
}

function massRules(lighter: ChartMinimum | null, chart_m: number, words: Words): AppliedRule[] {
	const asked_m = lighter?.thickness_m ?? 0;
	return lighter && asked_m > chart_m ? [massRule(lighter, asked_m, words)] : [];
}

/** Of what counts as one machine: what is drawn is one too, together or apart. */
function heaviest_kg({ use, mass_kg, trailer }: LoadCase, added_kg: number): number {
	return Math.max(mass_kg + (use === null ? added_kg : 0), trailer?.mass_kg ?? 0);
}

function needsEngineer({ use }: LoadCase, counted_kg: number): boolean {
	return counted_kg > ENGINEER_ABOVE_kg || use === 'truckWithShelter';
}

function forAnEngineer(
	load: LoadCase,
	{ mass_kg: counted_kg, spacing_m }: Counted,
	afloat_m: number | null,
	words: Words
): Requirement {
	const alone_m =
		load.use === 'truckWithShelter'
			? Math.max(ALONE_FACTOR * goldThickness_m(counted_kg), afloat_m ?? 0)
			: null;
	const rule = engineerRule(load.use, { counted_kg, limit_kg: ENGINEER_ABOVE_kg }, alone_m, words);
	return { required_m: null, base_m: null, counted_kg, spacing_m, parts: null, rules: [rule] };
}
