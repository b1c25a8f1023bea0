import { addDays } from '#lib/model/calendar.ts';
import type { IceColumn } from '#lib/model/column.ts';
import type { EnsembleInput } from '#lib/model/ensemble/run.ts';
import type { Reading } from '#lib/model/reading.ts';
import { runSeason } from '#lib/model/season.ts';
import { inventedWinter } from './invented-winter.ts';

const FIRST_READING_d = 12;
const BETWEEN_READINGS_d = 17;
const MOST_READINGS = 10; // later there is no ice
/** Of the single season, in turn: what a hole at some spot might show. */
const SHARES = [1.06, 0.93, 0.99, 1.08, 0.95];
const SEED = 2_718;

/** The first days of the invented winter for an ensemble, with a hole every 17 days, ten at most. */
export function inventedEnsemble(members: number, days: number): EnsembleInput {
	const winter = inventedWinter();
	const columns = runSeason(winter).map((day) => day.column);
	const drilled = Array.from({ length: MOST_READINGS }, (_, k) => dayOf(k)).filter((i) => i < days);
	return {
		lake: winter.lake,
		freezeUpOn: winter.freezeUpOn,
		freezeUpBy: null,
		until: addDays(winter.freezeUpOn, days),
		weather: winter.weather.slice(0, days),
		scenarios: [],
		events: [],
		readings: drilled.map((i, k) => inventedReading(k, addDays(winter.freezeUpOn, i), columns[i])),
		memory: null,
		members,
		seed: SEED
	};
}

const dayOf = (reading: number) => FIRST_READING_d + reading * BETWEEN_READINGS_d;

/** A hole with whole and white ice and the snow beside it. */
function inventedReading(k: number, on: string, column: IceColumn | undefined): Reading {
	if (column === undefined) throw new RangeError(`the invented winter has no day ${on}`);
	const share = SHARES[k % SHARES.length] ?? 1;
	const hole = {
		total_m: share * (column.clear_m + column.white_m),
		clear_m: null,
		white_m: share * column.white_m,
		snow_m: column.snow_m,
		slush_m: null,
		freeboard_m: null
	};
	return {
		id: `invented-${k}`,
		on,
		place: null,
		kind: 'measured',
		holes: [hole],
		core: null,
		by: null,
		secondHand: false,
		remark: null
	};
}
