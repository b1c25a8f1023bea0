import type { IsoDate } from '../calendar.ts';
import { dayDegrees, meanAir_degC } from '../degree-days.ts';
import type { ScenarioWeather } from './scenarios.ts';

/** The mean of a day to come over all futures. */
export interface MeanDay {
	air_degC: number | null;
	freezing_degCd: number;
	thawing_degCd: number;
}

/** Temperature, frost and thaw of each day to come, as the mean over the scenarios that tell them. */
export function meanFuture(
	scenarios: readonly ScenarioWeather[],
	latitude: number
): Map<IsoDate, MeanDay> {
	const sums = new Map<IsoDate, { count: number; air: number; frost: number; thaw: number }>();
	for (const { days } of scenarios)
		for (const day of days) {
			const air = meanAir_degC(day);
			const degrees = dayDegrees(day, latitude);
			if (air === null || degrees === null) continue;
			const sum = sums.get(day.on) ?? { count: 0, air: 0, frost: 0, thaw: 0 };
			sum.count++;
			sum.air += air;
			sum.frost += degrees.freezing_degCd;
			sum.thaw += degrees.thawing_degCd;
			sums.set(day.on, sum);
		}
	return new Map(
		[...sums].map(([on, { count, air, frost, thaw }]) => [
			on,
			{ air_degC: air / count, freezing_degCd: frost / count, thawing_degCd: thaw / count }
		])
	);
}
