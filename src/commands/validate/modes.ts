import type { IsoDate } from '#lib/model/calendar.ts';
import type { IceColumn } from '#lib/model/column.ts';
import { total_m } from '#lib/model/column.ts';
import type { Parameters } from '#lib/model/parameters.ts';
import type { Reading } from '#lib/model/reading.ts';
import { runSeason } from '#lib/model/season.ts';
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
	const column = columnOn(of.winter, of.reading.on, readings, parametersOf(of.winter));
	return {
		of,
		total_m: column ? total_m(column) : null,
		white_m: column?.white_m ?? null,
		snow_m: column?.snow_m ?? null,
		p05_m: null,
		p10_m: null,
		p95_m: null,
		crps_m: null
	};
}

/** The state at the start of `on`; the model is given no weather of that day or later. */
function columnOn(
	winter: LakeWinter,
	on: IsoDate,
	readings: Reading[],
	parameters: Parameters | undefined
): IceColumn | null {
	const days = runSeason({
		lake: winter.lake,
		freezeUpOn: winter.freezeUpOn,
		until: on,
		weather: winter.weather.filter((day) => day.on < on),
		readings,
		...(parameters ? { parameters } : {})
	});
	const last = days.at(-1);
	return last?.on === on ? last.column : null;
}
