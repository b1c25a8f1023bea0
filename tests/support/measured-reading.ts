import type { IsoDate } from '#lib/model/calendar.ts';
import type { Hole, Reading } from '#lib/model/reading.ts';

/** A reading of one hole of which only these things were measured. */
export function measuredReading(id: string, on: IsoDate, hole: Partial<Hole>): Reading {
	return {
		id,
		on,
		place: null,
		kind: 'measured',
		holes: [
			{
				total_m: null,
				clear_m: null,
				white_m: null,
				snow_m: null,
				slush_m: null,
				freeboard_m: null,
				...hole
			}
		],
		core: null,
		by: null,
		secondHand: false,
		remark: null
	};
}
