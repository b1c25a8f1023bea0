import { chartMinimum, type ChartMinimum, type ChartSet, type ChartUse } from './load-case.ts';

/** The lightest of the machines that the app's own list holds against each row, lightest first. */
const MACHINES: readonly { use: ChartUse; from_kg: number }[] = [
	{ use: 'snowmobile', from_kg: 400 },
	{ use: 'atv', from_kg: 500 },
	{ use: 'car', from_kg: 1300 },
	{ use: 'lightTruck', from_kg: 2500 },
	{ use: 'heavyTruck', from_kg: 4500 }
];

/**
 * The row of the heaviest machine that weighs no more than `mass_kg`; `null` for what is lighter than
 * all of them. No load, with a row of its own or without, asks for less than this. For a load that
 * stands it is not doubled, as it is no row for what stands. Our choice, no source.
 */
export function rowByMass(
	minimums: readonly ChartMinimum[],
	set: ChartSet,
	mass_kg: number
): ChartMinimum | null {
	const machine = MACHINES.findLast(({ from_kg }) => from_kg <= mass_kg);
	return machine ? chartMinimum(minimums, set, machine.use) : null;
}
