import type { CsvTable } from '../read/parse-csv.ts';
import { SAMPLE, type Table } from './table.ts';

/** A CSV answer as a table whose paths are the names of its columns. */
export function csvAsTable({ header, rows }: CsvTable): Table {
	const leaves = header.map((name, index) => ({
		names: [name],
		path: name,
		values: rows.slice(0, SAMPLE).map((cells) => cells[index] ?? ''),
		unit: null,
		timePath: null
	}));
	return { layout: 'csv', rows: null, leaves: leaves.filter(({ path }) => path !== '') };
}
