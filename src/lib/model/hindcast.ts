import { daysBetween } from './calendar.ts';
import type { PredictedReading } from './hindsight.ts';
import { holeTotal_m, isDrilled, thicknessHoles } from './hole.ts';
import { outlook, type OutlookInput } from './outlook.ts';
import { placeKind } from './place-kind.ts';
import type { Reading } from './reading.ts';

/**
 * Each reading that was drilled through on the open part of a site, by day, beside what was estimated
 * for its day without it and without any later one. Readings of days without an estimate are left out.
 *
 * Readings of one day are predicted from the days before: none of them helps another.
 */
export function hindcast(input: OutlookInput): PredictedReading[] {
	const drilled = input.readings
		.filter((reading) => reading.kind === 'measured' && reading.on <= input.asOf)
		.filter((reading) => isDrilled(reading) && placeKind(reading.place) === 'open')
		.toSorted((a, b) => (a.on < b.on ? -1 : Number(a.on > b.on)));
	return drilled.flatMap((reading) => {
		const { id, on } = reading;
		const readings = input.readings.filter((other) => other.on < on);
		const days = outlook({ ...input, readings, asOf: on, until: on })?.forecast.days;
		const predicted = days?.find((day) => day.on === on)?.total_m;
		if (!predicted || predicted.p50 === null) return [];
		const last = drilled.findLast((other) => other.on < on);
		const daysSince = last ? daysBetween(last.on, on) : null;
		return [{ readingId: id, on, predicted, measured_m: mean_m(reading), daysSince }];
	});
}

function mean_m(reading: Reading): number {
	const holes = thicknessHoles(reading);
	return holes.reduce((sum, hole) => sum + (holeTotal_m(hole) ?? 0), 0) / holes.length;
}
