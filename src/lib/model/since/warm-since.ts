import type { IsoDate } from '../calendar.ts';
import type { Reading } from '../reading.ts';
import { calm, type WarmDay } from '../warm-day.ts';
import { nextWarmDay } from '../warm-spell.ts';
import type { SpellDay, WarmState } from '../warmth.ts';
import type { PartDay } from './part-day.ts';
import type { Since } from './since.ts';

const RANK: Record<WarmState, number> = { none: 0, doubled: 1, withheld: 2 };

/**
 * Where the warm-spell rules stand by the last hour observed, from where they stood on the day of asking.
 *
 * The hours of a part day count with those of the day before, as whole days do, so that the last 24
 * observed hours are always among them. Nothing here ends a spell: its frost and its hole wait until
 * their day is in.
 */
export function warmSince(
	warm: WarmDay | null,
	asOfDay: SpellDay | null,
	{ days, readings }: Pick<Since, 'days' | 'readings'>,
	hasHours: (on: IsoDate) => boolean
): WarmDay | null {
	if (asOfDay === null) return warm;
	const bad = readings.filter(isBadCore);
	const dates = [...new Set([...days, ...bad].map(({ on }) => on))].toSorted();
	const isHourly = (on: IsoDate): boolean => on > asOfDay.on || hasHours(on);
	let worst = warm ?? calm(asOfDay.on);
	let before = asOfDay;
	for (const on of dates) {
		const day = spellDay(on, days.find((each) => each.on === on) ?? null, asOfDay);
		if (day.aboveFreezing_h !== null || bad.some((each) => each.on === on)) {
			const next = nextWarmDay(worst, before, day, bad, isHourly);
			worst = RANK[next.state] < RANK[worst.state] ? worst : next;
		}
		before = day;
	}
	return worst;
}

function isBadCore({ core }: Reading): boolean {
	return core === 'wet' || core === 'candled';
}

/** The sheet is that of the day of asking: what has been lost since is not known yet. */
function spellDay(on: IsoDate, part: PartDay | null, asOfDay: SpellDay): SpellDay {
	const { sun_W_m2, column } = asOfDay;
	const warm_h = part?.aboveFreezing_h ?? 0;
	return {
		on,
		air_degC: null,
		freezing_degCd: 0,
		// Unknown rather than none: a part of a day is no frost.
		aboveFreezing_h: warm_h > 0 ? warm_h : null,
		sun_W_m2,
		column
	};
}
