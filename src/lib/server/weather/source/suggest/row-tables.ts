import type { JsonValue } from 'jsonpath-rfc9535';
import { pathText, type Step } from './json-path.ts';
import { SAMPLE, type Leaf, type Table } from './table.ts';
import { unitBeside } from './units-in.ts';
import { isContainer, isObject, isScalar, placesIn, type JsonObject } from './walk.ts';

export interface RowTable extends Table {
	/** Way to the array. */
	steps: readonly Step[];
	/** The object that the array is in, where it is in one. */
	owner: JsonObject | null;
}

/** Arrays of objects, or of arrays, with the single values that are in each. */
export function rowTables(root: JsonValue): RowTable[] {
	const owners = new Map<JsonValue, JsonObject>();
	const tables: RowTable[] = [];
	for (const { steps, value } of placesIn(root)) {
		if (isObject(value)) for (const child of Object.values(value)) owners.set(child, value);
		if (!Array.isArray(value)) continue;
		const rows = value.slice(0, SAMPLE).filter(isContainer);
		if (rows.length === 0) continue;
		const leaves = leafWays([rows[0], rows[Math.floor(rows.length / 2)], rows.at(-1)]).map((way) =>
			leafOf(way, rows)
		);
		if (leaves.length < 2) continue;
		const owner = owners.get(value) ?? null;
		tables.push({ layout: 'rows', rows: pathText([...steps, '*']), leaves, steps, owner });
	}
	return tables;
}

function leafOf(way: readonly Step[], rows: readonly JsonValue[]): Leaf {
	const parents = rows.map((row) => follow(row, way.slice(0, -1)));
	const parent = parents.find(isObject);
	return {
		names: way,
		path: pathText(way),
		values: rows.map((row) => follow(row, way) ?? null),
		unit: parent ? unitBeside(parent) : null,
		timePath: null
	};
}

/** Ways to the single values of rows, each once. */
function leafWays(rows: readonly (JsonValue | undefined)[]): Step[][] {
	const ways = new Map<string, Step[]>();
	for (const row of rows) {
		for (const { steps, value } of row === undefined ? [] : placesIn(row)) {
			if (isScalar(value)) ways.set(pathText(steps), [...steps]);
			else if (Array.isArray(value) && steps.length === 0) {
				for (const index of value.slice(0, 30).keys()) ways.set(`$[${index}]`, [index]);
			}
		}
	}
	return [...ways.values()];
}

function follow(value: JsonValue, way: readonly Step[]): JsonValue | undefined {
	let here: JsonValue | undefined = value;
	for (const step of way) {
		if (Array.isArray(here) && typeof step === 'number') here = here[step];
		else if (isObject(here) && typeof step === 'string' && Object.hasOwn(here, step))
			here = here[step];
		else return undefined;
	}
	return here;
}
