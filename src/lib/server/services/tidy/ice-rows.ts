import { holeTotal_m, thicknessHoles } from '#lib/model/hole.ts';
import { mean } from '#lib/model/hole-layers.ts';
import { placeKind } from '#lib/model/place-kind.ts';
import type { Hole, Reading } from '#lib/model/reading.ts';
import type { NewReading } from '../reading-input.ts';
import type { IceRow } from './rows.ts';
import { fromCentimetres, rounded, type Cell } from './write-table.ts';

export const ICE_HEADER = ['lake', 'date', 'total_cm', 'clear_cm', 'white_cm', 'snow_cm', 'qc'];

/** Layers that miss the total by more are said to. */
const MISSED_m = 0.005;

/**
 * A row of `ice.csv`: the mean of a reading's holes. `null` for what that table cannot hold: where the
 * tool did not go through or the ice broke, and at a landing, a crack or a ridge.
 */
export function iceCells(code: string, reading: Reading): Cell[] | null {
	if (reading.kind !== 'measured' || placeKind(reading.place) !== 'open') return null;
	const holes = thicknessHoles(reading);
	if (holes.length === 0) return null;
	const total_m = mean(holes.map(holeTotal_m)) ?? 0;
	const layered = holes.filter(hasLayers).length === holes.length;
	const clear_m = layered ? mean(holes.map((hole) => hole.clear_m)) : null;
	const white_m = layered ? mean(holes.map((hole) => hole.white_m)) : null;
	const isMissed = layered && Math.abs(total_m - (clear_m ?? 0) - (white_m ?? 0)) > MISSED_m;
	const qc = [isMissed ? 'layers_do_not_sum' : '', reading.secondHand ? 'second_hand' : ''];
	return [
		code,
		reading.on,
		rounded(total_m, 100),
		rounded(clear_m, 100),
		rounded(white_m, 100),
		rounded(mean(reading.holes.map((hole) => hole.snow_m)), 100),
		qc.filter((mark) => mark !== '').join(' ')
	];
}

function hasLayers({ clear_m, white_m }: Hole): boolean {
	return clear_m !== null && white_m !== null;
}

/** A row of another's `ice.csv` as a reading; `null` where nothing was measured. */
export function readingDraft(row: IceRow): (Omit<NewReading, 'holes'> & { holes: Hole[] }) | null {
	const hole = {
		total_m: fromCentimetres(row.total_cm),
		clear_m: fromCentimetres(row.clear_cm),
		white_m: fromCentimetres(row.white_cm),
		snow_m: fromCentimetres(row.snow_cm),
		slush_m: null,
		freeboard_m: null
	};
	if (Object.values(hole).every((value) => value === null)) return null;
	return {
		on: row.date,
		place: null,
		kind: 'measured',
		holes: [hole],
		core: null,
		by: null,
		secondHand: /second_hand/.test(row.qc),
		remark: null
	};
}
