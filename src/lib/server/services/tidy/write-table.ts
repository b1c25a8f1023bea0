import { neutralCell } from '../csv-table.ts';

export type Cell = string | number | null;

/** A table as CSV; text that a spreadsheet would take for a formula is made harmless. */
export function writeTable(header: readonly string[], rows: readonly (readonly Cell[])[]): string {
	return [header, ...rows].map((row) => `${row.map(written).join(',')}\r\n`).join('');
}

function written(cell: Cell): string {
	if (cell === null) return '';
	return typeof cell === 'number' ? String(cell) : neutralCell(cell);
}

/** To a thousandth of the unit, which is far below what anybody measures. */
export function rounded(value: number | null, factor = 1): number | null {
	return value === null ? null : Number((value * factor).toFixed(3));
}

/** Takes off what the division adds in the last binary digits. */
export function fromCentimetres(length_cm: number | null): number | null {
	return length_cm === null ? null : Number((length_cm / 100).toFixed(7));
}
