import { addDays, type IsoDate } from './calendar.ts';
import type { CarriedHole, DrilledDay } from './drilled-day.ts';
import { isVehicle, type LoadCase } from './load-case.ts';
import { counted, type Words } from './words.ts';

/** Our rules, derived and cautious; no published minimum was found. */
export const HOLES_ON_FOOT = 3;
export const HOLES_VEHICLE = 5;
const LASTS_d = 7;
export const LASTS_AMPLE_d = 21;
const AMPLE = 1.5;
const LASTS_AT_EDGE_d = 1;

/** Whether holes support a requirement, and if not, what they lack. */
export type Support =
	| {
			isSupported: true;
			on: IsoDate;
			holes: number;
			thinnest_m: number;
			bound_m: number;
			until: IsoDate;
	  }
	| { isSupported: false; lacks: string };

export function holesFor(load: LoadCase): number {
	return isVehicle(load) ? HOLES_VEHICLE : HOLES_ON_FOOT;
}

/**
 * Whether some day's holes support a requirement today: enough of them, the thinnest of theirs and of
 * every later hole still clears it, and so does the day's lower bound `bound_m`, which has been carried
 * forward from them.
 *
 * They last seven days; 21 where they clear it one and a half times and nothing has flooded or thawed
 * since; one at a landing or a crack, or for a load whose way meets a wet crack; none at a ridge.
 * Holes of one day count together. Days without a temperature since, or a warm spell that has ended
 * since, end it. Holes that somebody else told do not count for a status, thin ones count against it: our
 * rule, cautious.
 */
export function supportOf(
	load: LoadCase,
	required_m: number,
	bound_m: number,
	days: readonly DrilledDay[],
	words: Words
): Support {
	let latest: Support | undefined;
	for (const day of days) {
		const support = judge(load, { required_m, bound_m }, day, days, words);
		if (support.isSupported) return support;
		latest ??= support;
	}
	return latest ?? { isSupported: false, lacks: 'no hole has been drilled' };
}

function judge(
	load: LoadCase,
	{ required_m, bound_m }: { required_m: number; bound_m: number },
	day: DrilledDay,
	days: readonly DrilledDay[],
	words: Words
): Support {
	const near = day.holes.filter((hole) => counts(hole.kind, day.age_d));
	const holes = near.filter((hole) => !hole.secondHand);
	const later = days.filter((other) => other.on > day.on).flatMap((other) => other.holes);
	const open = later.filter((hole) => hole.kind === 'open');
	const thinnest_m = Math.min(...[...near, ...open].map((hole) => hole.effective_m));
	const lasts_d = lasting_d(load, day, Math.min(thinnest_m, bound_m), required_m);
	const on = words.day(day.on);
	if (holes.length < holesFor(load)) return lack(tooFew(load, holes, near, on));
	if (day.age_d > lasts_d)
		return lack(
			`the holes of ${on} are ${day.age_d} days old and count for ${counted(lasts_d, 'day')}`
		);
	if (day.gapDays > 0)
		return lack(`${counted(day.gapDays, 'day')} since the holes of ${on} without a temperature`);
	if (day.hadSpell) return lack(`a warm spell has come since the holes of ${on}`);
	if (thinnest_m < required_m)
		return lack(`the thinnest hole since ${on} counts as ${words.thickness(thinnest_m)} by now`);
	if (bound_m < required_m)
		return lack(`the lower bound carried forward from ${on} is ${words.thickness(bound_m)}`);
	const isOpen = holes.filter((hole) => hole.kind === 'open').length >= holesFor(load);
	const until = addDays(day.on, isOpen ? lasts_d : LASTS_AT_EDGE_d);
	return { isSupported: true, on: day.on, holes: holes.length, thinnest_m, bound_m, until };
}

function tooFew(
	load: LoadCase,
	holes: readonly CarriedHole[],
	near: readonly CarriedHole[],
	on: string
): string {
	const asked = `${counted(holesFor(load), 'hole')} are asked, ${counted(holes.length, 'hole')} of ${on} count`;
	const told = near.length - holes.length;
	return told > 0
		? `${asked}, not the ${told} that lie elsewhere or that somebody else told`
		: asked;
}

function counts(kind: DrilledDay['holes'][number]['kind'], age_d: number): boolean {
	return kind === 'open' || (kind === 'edge' && age_d <= LASTS_AT_EDGE_d);
}

function lasting_d(load: LoadCase, day: DrilledDay, carried_m: number, required_m: number): number {
	if (load.wetCracks > 0) return LASTS_AT_EDGE_d;
	const isAmple = carried_m >= AMPLE * required_m && !day.hasFlooded && !day.hasThawed;
	return isAmple ? LASTS_AMPLE_d : LASTS_d;
}

function lack(lacks: string): Support {
	return { isSupported: false, lacks };
}
