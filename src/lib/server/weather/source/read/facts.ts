import { query, type JsonValue } from 'jsonpath-rfc9535';
import type { Station } from '../contract.ts';
import type { Mapping } from '../schema.ts';
import type { Answer } from './columns.ts';

/** The station that an answer names, or `null`. */
export function stationOf({ station }: Mapping, answer: Answer): Station | null {
	if (!station) return null;
	const number = (path: string | undefined, most: number) => {
		const value = Number(textAt(path, answer) ?? NaN);
		return Number.isFinite(value) && Math.abs(value) <= most ? value : null;
	};
	const found: Station = {
		name: textAt(station.name, answer)?.slice(0, 120) ?? null,
		latitude: number(station.latitude, 90),
		longitude: number(station.longitude, 180),
		elevation_m: number(station.elevation_m, 9000)
	};
	return Object.values(found).some((value) => value !== null) ? found : null;
}

/** What stands at a path, in a table in the first row of a column. */
export function valueAt(path: string, { json, table }: Answer): JsonValue | undefined {
	return table ? cellAt(path, table.header, table.rows[0]) : query(json, path)[0];
}

export function textAt(path: string | undefined, answer: Answer): string | null {
	const found = path === undefined ? undefined : valueAt(path, answer);
	const text = typeof found === 'number' || typeof found === 'string' ? String(found).trim() : '';
	return text === '' ? null : text;
}

function cellAt(
	name: string,
	header: readonly string[],
	row: readonly string[] | undefined
): JsonValue | undefined {
	const wanted = name.trim().toLowerCase();
	return row?.[header.findIndex((heading) => heading.trim().toLowerCase() === wanted)];
}
