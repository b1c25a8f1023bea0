import type { IsoDate } from '../calendar.ts';
import type { ForecastDay, ForecastLoad } from '../forecast.ts';

/** A warm spell is more likely than not from here. */
const THAW = 0.5;

/**
 * First day on which a test with a chisel or a drill is worth the trip: as likely as not a hole at a
 * random spot has what the lowest published chart asks of one person on foot, and no warm spell is
 * more likely than not. `null` where no day told is such a one.
 *
 * An even chance is our choice: sooner a trip ends at the shore more often than not.
 */
export function testDay(
	days: readonly Pick<ForecastDay, 'on' | 'effective_m'>[],
	from: IsoDate,
	lowest_m: number,
	thaw: Pick<ForecastLoad, 'days'>
): IsoDate | null {
	const pThaw = new Map(thaw.days.map((day) => [day.on, day.pThaw ?? 0]));
	const day = days.find(
		({ on, effective_m }) =>
			on >= from && (effective_m.p50 ?? 0) >= lowest_m && (pThaw.get(on) ?? 0) < THAW
	);
	return day?.on ?? null;
}
