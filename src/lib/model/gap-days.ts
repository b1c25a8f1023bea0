import { isDrilled } from './hole.ts';
import type { Reading } from './reading.ts';
import type { SeasonDay } from './season.ts';

/** For each day of a season those before it without a temperature, since freeze-up or the last hole. */
export function gapDays(season: readonly SeasonDay[], readings: readonly Reading[]): number[] {
	const drilled = new Set(readings.filter(isDrilled).map(({ id }) => id));
	let count = 0;
	return season.map((day, index) => {
		if (season[index - 1]?.source === 'gap') count++;
		if (day.anchoredBy.some((id) => drilled.has(id))) count = 0;
		return count;
	});
}
