import type { IsoDate } from '../calendar.ts';
import { normalQuantile } from '../ensemble/normal.ts';
import type { ScenarioWeather } from '../ensemble/scenarios.ts';
import type { LakeFacts } from '../lake.ts';
import type { WeatherDay } from '../weather.ts';
import type { FreezeThreshold } from './freeze-threshold.ts';
import { smoothedAir } from './smoothed-air.ts';

/** Thresholds that each future is held against, evenly spread over their distribution. */
const THRESHOLDS = 40;

export interface FreezeChance {
	on: IsoDate;
	/** Chance that the lake has frozen over by the end of the day. Rough. */
	pFrozen: number;
}

export interface FreezeChanceInput {
	lake: LakeFacts;
	/** Of this winter, what is known; sorted, ending where the futures begin. */
	known: readonly WeatherDay[];
	futures: readonly Pick<ScenarioWeather, 'days'>[];
	threshold: FreezeThreshold;
}

/**
 * How likely a lake has frozen over by each day: by the last known one, and by each after it.
 *
 * The share of futures and thresholds for which the smoothed air has been down to the threshold. Never
 * falls from day to day. Says nothing of wind, which keeps water open for days, nor of bays, which
 * freeze days to weeks before the middle.
 */
export function freezeChances(input: FreezeChanceInput): FreezeChance[] {
	const { lake, known, futures, threshold } = input;
	const thresholds_degC = Array.from(
		{ length: THRESHOLDS },
		(_, index) => threshold.mean_degC + threshold.sd_K * normalQuantile((index + 0.5) / THRESHOLDS)
	);
	const shareFrom = (lowest_degC: number): number =>
		thresholds_degC.filter((each) => each >= lowest_degC).length / THRESHOLDS;
	const past = smoothedAir(known, lake);
	const now = past.at(-1);
	if (now === undefined) return [];
	const lowest_degC = Math.min(...past.map(({ smoothed_degC }) => smoothed_degC));
	const runs = futures.map(({ days }) => {
		let low_degC = lowest_degC;
		return smoothedAir(days, lake, now.smoothed_degC).map(({ on, smoothed_degC }) => {
			low_degC = Math.min(low_degC, smoothed_degC);
			return { on, share: shareFrom(low_degC) };
		});
	});
	const coming = (runs[0] ?? []).map(({ on }, index) => ({
		on,
		pFrozen: runs.reduce((sum, run) => sum + (run[index]?.share ?? 0), 0) / runs.length
	}));
	return [{ on: now.on, pFrozen: shareFrom(lowest_degC) }, ...coming];
}
