import type { WeatherHour } from './hours-to-days.ts';

/** Hours on end with one and the same temperature after which a station has stuck. */
export const STUCK_h = 24;

const S_PER_HOUR = 3600;

/** A longer pause between two records ends a run: stations report every three hours at least. */
const LONGEST_PAUSE_S = 3 * S_PER_HOUR;

/**
 * The hours, with no temperature where it stands still for a day or longer.
 *
 * Guidance flags a thermometer that moves by no more than 0.5 K in 12 hours [EPA2000]. What is only
 * flagged there is left out here, so the rule is narrower: the very same figure for a whole day, our
 * choice, which calm overcast weather in whole degrees passes. A frozen reading of deep cold would
 * make ice that is not there. The hours are sorted.
 */
export function withoutStuckAir(hours: readonly WeatherHour[]): WeatherHour[] {
	const kept = [...hours];
	for (const [first, last] of stuckRuns(hours))
		for (let i = first; i <= last; i++) {
			const hour = kept[i];
			if (hour !== undefined) kept[i] = { ...hour, air_degC: null };
		}
	return kept;
}

/** First and last index of each run of one temperature that spans a day or longer. */
export function stuckRuns(hours: readonly WeatherHour[]): [first: number, last: number][] {
	const runs: [number, number][] = [];
	let start = -1;
	let last = -1;
	const close = () => {
		const span_s = (hours[last]?.at_s ?? 0) - (hours[start]?.at_s ?? 0) + S_PER_HOUR;
		if (start >= 0 && span_s >= STUCK_h * S_PER_HOUR && last > start) runs.push([start, last]);
	};
	hours.forEach((hour, index) => {
		if (hour.air_degC === null) return;
		const pause_s = hour.at_s - (hours[last]?.at_s ?? hour.at_s);
		if (hour.air_degC !== hours[start]?.air_degC || pause_s > LONGEST_PAUSE_S) {
			close();
			start = index;
		}
		last = index;
	});
	close();
	return runs;
}
