import { setImmediate as nextTurn } from 'node:timers/promises';
import { exec, query, type JsonValue } from 'jsonpath-rfc9535';
import { VALUE_ROLES, type ValueRole } from '../../cells/units.ts';
import type { Mapping, ValueMapping } from '../schema.ts';
import type { CsvTable } from './parse-csv.ts';

/** Times that belong to one or more columns of values. */
export interface Axis {
	path: string;
	raw: readonly JsonValue[];
}

/** The values of one role as they stand, one for each time of its axis; `null` where there is none. */
export interface Column {
	role: ValueRole;
	spec: ValueMapping;
	axis: Axis;
	raw: readonly JsonValue[];
	/** Takes the place of a missing value of the column before it. */
	isElse: boolean;
}

export interface Columns {
	columns: Column[];
	/** What does not fit together, a sentence each. */
	problems: string[];
}

/**
 * The columns of an answer: one query a column, never one a value. Other work gets its turn between
 * one column and the next.
 */
export async function columnsOf(mapping: Mapping, answer: Answer): Promise<Columns> {
	const find = finder(mapping, answer);
	const axes = new Map<string, Axis>();
	const axisAt = (path: string): Axis => {
		const known = axes.get(path);
		if (known) return known;
		const axis = { path, raw: withClock(find(path), mapping, find) };
		axes.set(path, axis);
		return axis;
	};
	const columns: Column[] = [];
	const problems: string[] = [];
	for (const role of VALUE_ROLES) {
		const spec = mapping.values[role];
		if (!spec) continue;
		const axis = axisAt(spec.time ?? mapping.time.path);
		for (const each of spec.orElse ? [spec, spec.orElse] : [spec]) {
			const raw = find(each.path);
			const isElse = each !== spec;
			if (raw.length > 0 && raw.length === axis.raw.length)
				columns.push({ role, spec: each, axis, raw, isElse });
			else if (!isElse || raw.length > 0) problems.push(misfit(each.path, raw, axis));
			await nextTurn();
		}
	}
	return { columns, problems };
}

export type Answer = { json: JsonValue; table: null } | { json: null; table: CsvTable };

/** Values by path: of the whole answer, or one for each row with `null` where a row has none. */
type Find = (path: string) => readonly JsonValue[];

function finder({ layout, rows }: Mapping, { json, table }: Answer): Find {
	if (table) return (name) => csvColumn(table, name);
	if (layout === 'rows' && rows !== undefined) return inRows(json, rows);
	return (path) => listOf(query(json, path));
}

/** A path may lead to an array, or to its elements. */
function listOf(found: JsonValue[]): JsonValue[] {
	const [first] = found;
	return found.length === 1 && Array.isArray(first) ? first : found;
}

function inRows(json: JsonValue, rows: string): Find {
	const places = new Map<string, number>();
	let depth = 0;
	exec(json, rows, (_, path) => {
		depth = path.length;
		places.set(JSON.stringify(path), places.size);
	});
	return (path) => {
		const values = Array.from<JsonValue>({ length: places.size }).fill(null);
		exec(json, rows + path.slice(1), (value, place) => {
			const index = places.get(JSON.stringify(place.slice(0, depth)));
			if (index !== undefined) values[index] = value;
		});
		return values;
	};
}

function csvColumn({ header, rows }: CsvTable, name: string): string[] {
	const wanted = name.trim().toLowerCase();
	const index = header.findIndex((heading) => heading.trim().toLowerCase() === wanted);
	return index < 0 ? [] : rows.map((cells) => cells[index] ?? '');
}

/** The date and the time of day joined, where they stand apart. */
function withClock(
	dates: readonly JsonValue[],
	{ time: { clock } }: Mapping,
	find: Find
): readonly JsonValue[] {
	if (clock === undefined) return dates;
	const clocks = find(clock);
	return dates.map((date, at) => `${String(date)} ${String(clocks[at] ?? '')}`);
}

function misfit(path: string, raw: readonly JsonValue[], axis: Axis): string {
	if (axis.raw.length === 0)
		return `No times were found at ${axis.path}: the source may have nothing for these days, or its answers have changed; try it again in the set-up.`;
	return raw.length === 0
		? `Nothing was found at ${path}; choose another place for it, or leave it out.`
		: `${path} has ${raw.length} values beside ${axis.raw.length} times at ${axis.path}, so that it can't be told which belongs to which; choose paths that go together.`;
}
