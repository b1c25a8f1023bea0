import type { IsoDate } from '../calendar.ts';
import { EXPECTED, LIKELY } from '../ensemble/dates.ts';
import type { ForecastLoad } from '../forecast.ts';

/** The last day on which a load's requirement is met. */
export type LastDay =
	| { kind: 'until'; on: IsoDate }
	/** Still met on the last day told. */
	| { kind: 'beyond'; on: IsoDate }
	/** Neither met now nor on any day told. */
	| { kind: 'never' }
	/** Not told: only an engineer can say, or nothing is estimated. */
	| { kind: 'unknown' };

export interface LastDays {
	/** As likely as not. */
	median: LastDay;
	/** The warm end: in nine of ten futures it is met for longer. */
	warmEnd: LastDay;
}

type Days = ForecastLoad['days'];

/**
 * Until when the thickness that a load asks for is there, from the day of asking on.
 *
 *   the last day with P(thickness ≥ requirement) ≥ 0.5, and the same with 0.9
 *
 * A tenth of all members, of spots and weather alike, fall short after the warm end. Without the rules
 * for warm spells, which close the ice whatever its thickness. `isSnowKnown`: no day is named on
 * usual snow.
 */
export function lastDays(days: Days, asOf: IsoDate, isSnowKnown: boolean): LastDays {
	const told = days.filter(({ on, pThickness }) => on >= asOf && pThickness !== null);
	if (!isSnowKnown || told.length === 0) return { median: UNKNOWN, warmEnd: UNKNOWN };
	return { median: lastAtLeast(told, EXPECTED), warmEnd: lastAtLeast(told, LIKELY) };
}

const UNKNOWN: LastDay = { kind: 'unknown' };

function lastAtLeast(told: Days, level: number): LastDay {
	const index = told.findLastIndex(({ pThickness }) => (pThickness ?? 0) >= level);
	const on = told[index]?.on;
	if (on === undefined) return { kind: 'never' };
	return { kind: index === told.length - 1 ? 'beyond' : 'until', on };
}

/**
 * The first day of the warm spell that is in force for the rest of what is told, more likely than not;
 * `null` where none is, or nothing past the day of asking is told.
 */
export function lastSpellFrom(days: Days, asOf: IsoDate): IsoDate | null {
	const told = days.filter(({ on, pThaw }) => on >= asOf && pThaw !== null);
	if (told.length < 2) return null;
	const before = told.findLastIndex(({ pThaw }) => (pThaw ?? 0) < EXPECTED);
	return told[before + 1]?.on ?? null;
}
