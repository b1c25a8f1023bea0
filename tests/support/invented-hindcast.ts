import { addDays } from '#lib/model/calendar.ts';
import type { PredictedReading } from '#lib/model/hindsight.ts';

/** Invented: a prediction of 25 cm, 20 to 31 with nine holes in ten, and 24 cm drilled. */
export function predictedReading(changes: Partial<PredictedReading> = {}): PredictedReading {
	return {
		readingId: 'r1',
		on: '2027-01-10',
		predicted: { p05: 0.2, p10: 0.21, p50: 0.25, p90: 0.3, p95: 0.31 },
		measured_m: 0.24,
		daysSince: 14,
		...changes
	};
}

/** An invented winter of ten readings two weeks apart, the last one outside its band. */
export function inventedHindcast(): PredictedReading[] {
	return Array.from({ length: 10 }, (_, index) => {
		const p50 = 0.1 + 0.04 * index;
		const error_m = index === 9 ? 0.09 : 0.01 * ((index % 4) - 1);
		return predictedReading({
			readingId: `r${index}`,
			on: addDays('2026-12-10', 14 * index),
			predicted: { p05: p50 - 0.06, p10: p50 - 0.05, p50, p90: p50 + 0.05, p95: p50 + 0.06 },
			measured_m: p50 - error_m,
			daysSince: index === 0 ? null : 14
		});
	});
}
