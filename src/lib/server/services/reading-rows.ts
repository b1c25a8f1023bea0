import type { Reading } from '#lib/model/reading.ts';
import { neutralCell } from './csv-table.ts';

export const LENGTHS = ['total', 'clear', 'white', 'snow', 'slush', 'freeboard'] as const;

export const HEADER = [
	'on',
	'place',
	'kind',
	'hole',
	...LENGTHS.map((length) => `${length}_cm`),
	'core',
	'by',
	'secondhand',
	'remark'
];

/** A row a hole; a reading without one has a row all the same. */
export function toRows(reading: Reading): string[][] {
	const { on, place, kind, core, by, secondHand, remark } = reading;
	const holes = reading.holes.length > 0 ? reading.holes : [null];
	return holes.map((hole, index) => [
		on,
		neutralCell(place ?? ''),
		kind,
		hole ? String(index + 1) : '',
		...LENGTHS.map((name) => toCentimetres(hole?.[`${name}_m`] ?? null)),
		core ?? '',
		neutralCell(by ?? ''),
		secondHand ? 'yes' : '',
		neutralCell(remark ?? '')
	]);
}

function toCentimetres(length_m: number | null): string {
	return length_m === null ? '' : String(Number((length_m * 100).toFixed(3)));
}
