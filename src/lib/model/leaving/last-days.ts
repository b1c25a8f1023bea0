import type { IsoDate } from '../calendar.ts';
import { EXPECTED, LIKELY } from '../ensemble/dates.ts';
import { firstInARow, stretchFrom, type Stretch } from '../ensemble/stretches.ts';
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
 *   the last day with P(thickness ≥ requirement) ≥ 0.5, and the same with 0.9, before it falls
 *
 * of the stretch that the day of asking lies in, else of the next. What is met again after a fall, as
 * where snow sinks a shelter for some weeks, is none to stay for. A tenth of all members, of spots and
 * weather alike, fall short after the warm end. Without the rules for warm spells, which close the ice
 * whatever its thickness. `isSnowKnown`: no day is named on usual snow.
 */
export function lastDays(days: Days, asOf: IsoDate, isSnowKnown: boolean): LastDays {
	const told = days.filter(({ on, pThickness }) => on >= asOf && pThickness !== null);
	if (!isSnowKnown || told.length === 0) return { median: UNKNOWN, warmEnd: UNKNOWN };
	const median = stretchOf(told, EXPECTED);
	const within = median ? told.slice(0, median.last + 1) : [];
	const warm = stretchOf(within, LIKELY, EXPECTED);
	return {
		median: lastDayOf(told, median),
		// Never later than the middle, nor in a stretch that comes after it.
		warmEnd: lastDayOf(told, warm && { ...warm, falls: warm.falls || median?.falls === true })
	};
}

const UNKNOWN: LastDay = { kind: 'unknown' };

/** That of the first day told, else the first of three days in a row, else of any; `null` where none is. */
function stretchOf(told: Days, level: number, ends = 0): Stretch | null {
	const isMet = ({ pThickness }: Days[number]) => (pThickness ?? 0) >= level;
	const row = told.slice(0, 1).some(isMet) ? 0 : firstInARow(told, level);
	const first = row < 0 ? told.findIndex(isMet) : row;
	return first < 0 ? null : stretchFrom(told, level, first, ends);
}

function lastDayOf(told: Days, stretch: Stretch | null): LastDay {
	const on = told[stretch?.last ?? -1]?.on;
	if (stretch === null || on === undefined) return { kind: 'never' };
	return { kind: stretch.falls ? 'until' : 'beyond', on };
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
