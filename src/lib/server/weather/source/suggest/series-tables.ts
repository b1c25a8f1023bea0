import type { JsonValue } from 'jsonpath-rfc9535';
import { pathText } from './json-path.ts';
import { rowTables, type RowTable } from './row-tables.ts';
import type { Leaf, Table } from './table.ts';
import { timeFormOf } from './time-form.ts';
import { unitBeside } from './units-in.ts';

/** Layers that each have rows of their own, a time and a value: columns with times of their own. */
export function seriesTable(root: JsonValue): Table[] {
	const leaves = rowTables(root).flatMap(seriesOf);
	return leaves.length > 1 ? [{ layout: 'columns', rows: null, leaves }] : [];
}

function seriesOf({ steps, leaves, owner }: RowTable): Leaf[] {
	const times = leaves.filter(({ values }) => timeFormOf(values) !== null);
	const numbers = leaves.filter(({ values }) => isNumeric(values));
	const [time] = times;
	const [number] = numbers;
	if (!time || !number || times.length !== 1 || numbers.length !== 1) return [];
	return [
		{
			names: steps,
			path: pathText([...steps, '*', ...number.names]),
			values: number.values,
			unit: number.unit ?? (owner ? unitBeside(owner) : null),
			timePath: pathText([...steps, '*', ...time.names]),
			times: time.values
		}
	];
}

export function isNumeric(values: readonly JsonValue[]): boolean {
	const known = values.filter((value) => value !== null && value !== '');
	return (
		known.length > 0 &&
		known.every(
			(value) =>
				typeof value === 'number' ||
				(typeof value === 'string' && value.length < 20 && Number.isFinite(Number(value)))
		)
	);
}
