/** The row of the published charts that a load is held against. */
export type ChartUse =
	| 'onFoot'
	| 'group'
	| 'snowmobile'
	| 'atv'
	| 'car'
	| 'lightTruck'
	| 'heavyTruck'
	| 'truckWithShelter';

/** `strict` is the envelope of the most cautious charts, `common` the upper end of the usual ones. */
export type ChartSet = 'strict' | 'common';

/** What a load draws behind it. */
export interface Trailer {
	/** With all that is on it. */
	mass_kg: number;
	/** Kept between the two, by a long rope for one; `null`: hitched, right behind. */
	apart_m: number | null;
}

/** Something that somebody brings onto the ice. */
export interface LoadCase {
	id: string;
	name: string;
	/** Everything that stands on the ice, people and gear included. */
	mass_kg: number;
	/** `null`: no published row fits; Gold's formula and the rows of machines that weigh no more decide. */
	use: ChartUse | null;
	/** Time it stands in one place; 0 while it keeps moving. */
	parked_h: number;
	/** Wet cracks that its way meets at one place. */
	wetCracks: 0 | 1 | 2;
	/** Its way crosses moving water. */
	current: boolean;
	group: boolean;
	trailer: Trailer | null;
	/** How many of them, each with its trailer, go together. */
	count: number;
	/** Kept from one of them to the next; `null`: nobody keeps any. */
	spacing_m: number | null;
}

/** What a set of published charts asks for one use. */
export interface ChartMinimum {
	use: ChartUse;
	set: ChartSet;
	/** `null`: an engineer. */
	thickness_m: number | null;
	body: string;
	year: string;
	governedBy: string;
	confidence: string;
	note: string;
}

/** Loads above this are for a qualified ice engineer. Worksite guides' limit for light loads [M-hi]. */
export const ENGINEER_ABOVE_kg = 5000;

/** Two people and their sled: the heaviest load that is still people on foot. */
const ON_FOOT_UP_TO_kg = 250;

/**
 * True for what is judged by the thinnest of five spots and asks five holes: whatever row it is put
 * under, neither one person nor what people draw is heavier than two people and their sled.
 */
export function isVehicle(load: LoadCase): boolean {
	if (load.use === null) return all_kg(load) > ON_FOOT_UP_TO_kg;
	if (load.use !== 'onFoot' && load.use !== 'group') return true;
	const person_kg = load.use === 'onFoot' ? load.mass_kg : 0;
	return Math.max(person_kg, load.trailer?.mass_kg ?? 0) > ON_FOOT_UP_TO_kg;
}

/** Everything that is on the ice, wherever it is. */
export function all_kg({ mass_kg, trailer, count }: LoadCase): number {
	return (mass_kg + (trailer?.mass_kg ?? 0)) * count;
}

/** The row of a set for a use. @throws RangeError when the charts lack it. */
export function chartMinimum(
	minimums: readonly ChartMinimum[],
	set: ChartSet,
	use: ChartUse
): ChartMinimum {
	const row = minimums.find((minimum) => minimum.set === set && minimum.use === use);
	if (!row) throw new RangeError(`minimums must hold a ${set} row for ${use}, found none`);
	return row;
}
