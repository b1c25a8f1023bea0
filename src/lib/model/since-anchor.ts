import type { IsoDate } from './calendar.ts';
import { total_m } from './column.ts';
import { isDrilled } from './hole.ts';
import type { Reading } from './reading.ts';
import type { SeasonDay } from './season.ts';
import { ROTTING_SUN_W_m2 } from './warm-spell.ts';

/** What a day without a temperature may have grown, or once it melts, taken. Our choice. */
const GAP_GROWTH_m = 0.01;
// 5 °C·d at 0.6 cm [M-med], or 100 W/m² of sun [C], and a third more for members that thaw faster.
const GAP_MELT_m = 0.04;

/** Days without a temperature since a hole last set the thickness, or since freeze-up. */
export interface SinceAnchor {
	gapDays: number;
	/** What they may have changed: each errs the same way, so they add up. */
	gaps_m: number;
	/** The same without the day's own holes. */
	unread_m: number;
}

const NONE: SinceAnchor = { gapDays: 0, gaps_m: 0, unread_m: 0 };

/** The account for each day of a season, in its order. A reading of snow alone does not anchor. */
export function sinceAnchor(
	days: readonly SeasonDay[],
	readings: readonly Reading[]
): SinceAnchor[] {
	const drilled = new Set(readings.filter(isDrilled).map(({ id }) => id));
	let account = NONE;
	return days.map((day, index) => {
		const before = days[index - 1];
		const isAfterGap = before?.source === 'gap';
		const unread_m = account.gaps_m + (isAfterGap ? gap_m(before, day) : 0);
		account = day.anchoredBy.some((id) => drilled.has(id))
			? { gapDays: 0, gaps_m: 0, unread_m }
			: { gapDays: account.gapDays + (isAfterGap ? 1 : 0), gaps_m: unread_m, unread_m };
		return account;
	});
}

/**
 * Days without a temperature take from the bounds all that they may have melted or failed to grow: of
 * each day, the last account standing for those past the known weather.
 */
export function gapsByDay(
	days: readonly SeasonDay[],
	accounts: readonly SinceAnchor[]
): (on: IsoDate) => SinceAnchor {
	const known = new Map(days.map(({ on }, index) => [on, accounts[index] ?? NONE]));
	const { gapDays, gaps_m } = accounts.at(-1) ?? NONE;
	const last = { gapDays, gaps_m, unread_m: gaps_m };
	return (on) => known.get(on) ?? last;
}

function gap_m(gap: SeasonDay, after: SeasonDay): number {
	const hasMelted = total_m(after.column) < total_m(gap.column);
	const mayMelt = gap.sun_W_m2 > ROTTING_SUN_W_m2 || after.thawing_degCd > 0 || hasMelted;
	return mayMelt ? GAP_MELT_m : GAP_GROWTH_m;
}
