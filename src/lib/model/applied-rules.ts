import { GOLD_A_kg_cm2 } from './bearing.ts';
import type { AppliedRule } from './forecast.ts';
import type { ChartMinimum, ChartUse } from './load-case.ts';
import type { Words } from './words.ts';

const NO_SOURCE = 'common practice, no source';

const USES: Record<ChartUse, string> = {
	onFoot: 'one person on foot',
	group: 'a group on foot',
	snowmobile: 'a snowmobile',
	atv: 'an ATV or side-by-side',
	car: 'a car or small SUV',
	lightTruck: 'a light or medium truck',
	heavyTruck: 'a heavy-duty truck',
	truckWithShelter: 'a truck with a shelter'
};

/** The published minimum that a load is held against. */
export function chartRule(row: ChartMinimum, thickness_m: number, words: Words): AppliedRule {
	return {
		code: 'chartMinimum',
		text: `The ${row.set} chart minimum for ${USES[row.use]} is ${words.requirement(thickness_m)} of clear, hard ice.`,
		source: `${row.body}, ${row.year}`
	};
}

/** What stands in no chart: the row is for one, and more is at that place. */
export function addedRule(added_kg: number, thickness_m: number, words: Words): AppliedRule {
	return {
		code: 'addedToChart',
		text: `The chart is for one of them: ${words.mass(added_kg)} on top of it make that ${words.requirement(thickness_m)}, added as Gold's formula adds loads.`,
		source: 'our choice, no source'
	};
}

/** The row of a machine that is no heavier, where it asks for more than the load's own or there is none. */
export function massRule(row: ChartMinimum, thickness_m: number, words: Words): AppliedRule {
	return {
		code: 'chartByMass',
		text: `It, or what it draws, weighs as much as ${USES[row.use]} or more and asks for no less, moving or standing: ${words.requirement(thickness_m)} by the ${row.set} charts.`,
		source: `${row.body}, ${row.year}; by mass: our choice, no source`
	};
}

/** For a load that no chart has a row for: no less than any chart asks of one person. */
export function leastRule(row: ChartMinimum, thickness_m: number, words: Words): AppliedRule {
	return {
		code: 'leastOfCharts',
		text: `No chart has a row for this load; below ${words.requirement(thickness_m)} the ${row.set} charts let nobody on.`,
		source: `${row.body}, ${row.year}`
	};
}

export function goldRule(mass_kg: number, gold_m: number, words: Words): AppliedRule {
	return {
		code: 'goldFormula',
		text: `Gold's formula with A = ${GOLD_A_kg_cm2} kg/cm² asks for ${words.requirement(gold_m)} under ${words.mass(mass_kg)}.`,
		source: 'Gold 1971'
	};
}

export function parkedRule(hours: number): AppliedRule {
	return {
		code: 'parked',
		text: `Parked more than ${hours} hours: the thickness asked for is doubled.`,
		source: 'Smith 2004'
	};
}

export function currentRule(isRiver: boolean): AppliedRule {
	return {
		code: 'current',
		text: `${isRiver ? 'River ice' : 'Ice over a current'}: 15 % more thickness is asked for.`,
		source: 'worksite table reproduced by the County of Barrhead and the City of Edmonton'
	};
}

export function warmSpellRule(): AppliedRule {
	return {
		code: 'warmSpell',
		text: 'Warm spell: the thickness asked for is doubled.',
		source: 'Minnesota DNR 2013, as reported'
	};
}

export function wetCrackRule(cracks: 1 | 2): AppliedRule {
	return {
		code: cracks === 1 ? 'wetCrack' : 'wetCracksCrossing',
		text:
			cracks === 1
				? "A wet crack on the way: half the load in Gold's formula."
				: "Two wet cracks that meet on the way: a quarter of the load in Gold's formula.",
		source: NO_SOURCE
	};
}

export function coldSnapRule(fall_K: number, snow_m: number, words: Words): AppliedRule {
	return {
		code: 'coldSnap',
		text: `Fall of more than ${words.step(fall_K)} in a day with less than ${words.depth(snow_m)} of snow on the ice: half the load in Gold's formula.`,
		source: `${NO_SOURCE}; Gold 1971 names sudden cold among the causes of failure`
	};
}

/** Why no thickness is stated. `alone_m` is what somebody who judges alone would have to ask at least. */
export function engineerRule(
	use: ChartUse | null,
	{ counted_kg, limit_kg }: { counted_kg: number; limit_kg: number },
	alone_m: number | null,
	words: Words
): AppliedRule {
	const isHeavy = counted_kg > limit_kg;
	const isShelter = use === 'truckWithShelter';
	const heavy = isHeavy ? [`above ${words.mass(limit_kg)} at one place`] : [];
	const why = [...heavy, ...(isShelter ? ['a vehicle parked with its shelter'] : [])].join(', ');
	const alone =
		alone_m === null
			? ''
			: ` Judged alone, this is the least, by Gold's formula doubled and by staying above the water: ${words.requirement(alone_m)}.`;
	return {
		code: 'askAnEngineer',
		text: `A qualified ice engineer and the local rules decide: ${why}.${alone}`,
		source: `worksite guides (Alberta 2013, NWT 2015); Smith 2004`
	};
}
