import type { JsonValue } from 'jsonpath-rfc9535';
import { pathText } from './json-path.ts';
import { SAMPLE, type Leaf, type Table } from './table.ts';
import { isObject, isScalar, placesIn } from './walk.ts';

/** Objects that hold arrays of one length side by side. */
export function columnTables(root: JsonValue): Table[] {
	const tables: Table[] = [];
	for (const { steps, value } of placesIn(root)) {
		if (!isObject(value)) continue;
		const byLength = new Map<number, Leaf[]>();
		for (const [name, values] of Object.entries(value)) {
			if (!Array.isArray(values) || values.length < 2 || !values.slice(0, 20).every(isScalar))
				continue;
			const leaf: Leaf = {
				names: [...steps, name],
				path: pathText([...steps, name]),
				values: values.slice(0, SAMPLE),
				unit: null,
				timePath: null
			};
			byLength.set(values.length, [...(byLength.get(values.length) ?? []), leaf]);
		}
		for (const leaves of byLength.values()) {
			if (leaves.length > 1) tables.push({ layout: 'columns', rows: null, leaves });
		}
	}
	return tables;
}
