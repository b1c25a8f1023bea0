import type { IsoDate } from '#lib/model/calendar.ts';
import type { Hole, Reading } from '#lib/model/reading.ts';

/** A reading as the chart shows it: its mean, and each hole beside it. */
export interface ReadingPoint {
	on: IsoDate;
	kind: Reading['kind'];
	place: string | null;
	secondHand: boolean;
	mean_m: number;
	holes_m: number[];
}

/** How each kind looks. */
export const POINT_STYLE = {
	measured: 'circle',
	atLeast: 'triangle',
	wentThrough: 'crossRot'
} as const satisfies Record<Reading['kind'], string>;

/** Readings with a thickness, up to `asOf`; ice that broke counts as none where nobody measured. */
export function readingPoints(readings: readonly Reading[], asOf: IsoDate): ReadingPoint[] {
	return readings.flatMap(({ on, kind, place, secondHand, holes }) => {
		if (on > asOf) return [];
		const holes_m = holes.map(holeTotal_m).filter((total_m) => total_m !== null);
		if (holes_m.length === 0 && kind !== 'wentThrough') return [];
		const sum_m = holes_m.reduce((sum, total_m) => sum + total_m, 0);
		const mean_m = sum_m / Math.max(1, holes_m.length);
		return [{ on, kind, place, secondHand, mean_m, holes_m }];
	});
}

/** Clear and white ice of one hole, `null` when neither the whole nor both parts were measured. */
export function holeTotal_m({ total_m, clear_m, white_m }: Hole): number | null {
	if (total_m !== null) return total_m;
	return clear_m === null || white_m === null ? null : clear_m + white_m;
}
