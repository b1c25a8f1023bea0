import type { IsoDate } from '#lib/model/calendar.ts';
import { total_m } from '#lib/model/column.ts';
import { lowerBound_m } from '#lib/model/lower-bound.ts';
import type { Parameters } from '#lib/model/parameters.ts';
import type { Reading } from '#lib/model/reading.ts';
import { runSeason } from '#lib/model/season.ts';
import type { DoubtedDay } from '#lib/model/site-doubt.ts';
import { withDoubt } from '#lib/model/site-doubt.ts';
import type { Case, LakeWinter } from './lake-winter.ts';
import { asReading, casesOf } from './lake-winter.ts';
import type { Prediction } from './scores.ts';

/** Parameters to score a lake with; `undefined` means as shipped. */
export type ParametersOf = (winter: LakeWinter) => Parameters | undefined;

export const asShipped: ParametersOf = () => undefined;

/** Weather, freeze-up and the lake's facts; no reading of any kind. */
export function priorPredictions(
	winters: readonly LakeWinter[],
	parametersOf: ParametersOf
): Prediction[] {
	return casesOf(winters).map((of) => predict(of, [], parametersOf));
}

/** Also this winter's readings of earlier days. A winter's first readings are not predicted. */
export function recalibratedPredictions(
	winters: readonly LakeWinter[],
	parametersOf: ParametersOf
): Prediction[] {
	return casesOf(winters)
		.filter(({ previous }) => previous !== null)
		.map((of) => {
			const earlier = of.winter.readings.filter((other) => other.on < of.reading.on);
			return predict(of, earlier.map(asReading), parametersOf);
		});
}

function predict(of: Case, readings: Reading[], parametersOf: ParametersOf): Prediction {
	const day = dayOn(of.winter, of.reading.on, readings, parametersOf(of.winter));
	return {
		of,
		total_m: day ? total_m(day.day.column) : null,
		white_m: day?.day.column.white_m ?? null,
		snow_m: day?.day.column.snow_m ?? null,
		p05_m: null,
		p10_m: day ? lowerBound_m(total_m(day.day.column), day.doubt.total) : null,
		p95_m: null,
		crps_m: null
	};
}

/** The state at the start of `on`; the model is given no weather of that day or later. */
function dayOn(
	winter: LakeWinter,
	on: IsoDate,
	readings: Reading[],
	parameters: Parameters | undefined
): DoubtedDay | null {
	const days = runSeason({
		lake: winter.lake,
		freezeUpOn: winter.freezeUpOn,
		until: on,
		weather: winter.weather.filter((day) => day.on < on),
		readings,
		...(parameters ? { parameters } : {})
	});
	const last = withDoubt(days, readings).at(-1);
	return last?.day.on === on ? last : null;
}
