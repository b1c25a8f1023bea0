import type { IsoDate } from '../calendar.ts';
import type { ForecastLoad } from '../forecast.ts';
import { LIKELY } from '../ensemble/dates.ts';
import { lastDays } from '../leaving/last-days.ts';

type Days = ForecastLoad['days'];

/**
 * Whether it is snow that ends the days of what stands on the ice, and not thin ice: on the first day
 * that falls short the requirement would still be met nine times in ten if no snow lay there.
 *
 * `bare`: the same days without snow. `false` where nothing ends in what is told.
 */
export function isEndedBySnow(days: Days, bare: Days, asOf: IsoDate): boolean {
	const { warmEnd } = lastDays(days, asOf, true);
	if (warmEnd.kind === 'unknown' || warmEnd.kind === 'beyond') return false;
	const { on: last } = warmEnd.kind === 'until' ? warmEnd : { on: null };
	const first = days.find(({ on }) => (last === null ? on >= asOf : on > last));
	const chance = bare.find(({ on }) => on === first?.on)?.pThickness ?? 0;
	return chance >= LIKELY;
}
