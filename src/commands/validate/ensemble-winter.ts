import { addDays, type IsoDate } from '#lib/model/calendar.ts';
import type { SiteMemory } from '#lib/model/ensemble/memory.ts';
import { runEnsemble, type EnsembleDay } from '#lib/model/ensemble/run.ts';
import type { Parameters } from '#lib/model/parameters.ts';
import type { LakeWinter, ScoredReading } from './lake-winter.ts';
import { asReading } from './lake-winter.ts';

/** Members of every scored ensemble. Twice as many move errors by up to 0.2 cm, shares by 0.02 [C]. */
export const MEMBERS = 300;
const SEED = 2061;

/** What an ensemble of a winter may know besides the weather. */
export interface Known {
	readings: readonly ScoredReading[];
	memory: SiteMemory | null;
	/** `undefined`: as shipped. */
	parameters: Parameters | undefined;
}

/** Runs the ensemble of a winter with its weather as measured, to the day `until`. */
export function followWinter(
	winter: LakeWinter,
	{ readings, memory, parameters }: Known,
	until: IsoDate,
	onDay: (day: EnsembleDay) => void
): void {
	runEnsemble(
		{
			lake: winter.lake,
			freezeUpOn: winter.freezeUpOn,
			freezeUpBy: null,
			until,
			weather: winter.weather,
			scenarios: [],
			events: [],
			readings: readings.map(asReading),
			memory,
			members: MEMBERS,
			seed: SEED,
			...(parameters ? { parameters } : {})
		},
		onDay
	);
}

/** The first day that the weather of a winter says nothing of. */
export function dayAfterWeather(winter: LakeWinter): IsoDate | null {
	const last = winter.weather.at(-1);
	return last ? addDays(last.on, 1) : null;
}
