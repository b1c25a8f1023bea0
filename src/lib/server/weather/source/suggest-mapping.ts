import type { JsonValue } from 'jsonpath-rfc9535';
import type { Suggestion } from './contract.ts';
import type { CsvTable } from './read/parse-csv.ts';
import { candidatesOf, sampleOf, toGuess } from './suggest/choose-values.ts';
import { timeOf } from './suggest/choose-time.ts';
import { columnTables } from './suggest/column-tables.ts';
import { csvAsTable } from './suggest/csv-table.ts';
import { issuedGuess, stationGuess } from './suggest/issued-guess.ts';
import { mappingFrom, type Extras, type Understood } from './suggest/mapping-from.ts';
import { rowTables } from './suggest/row-tables.ts';
import { seriesTable } from './suggest/series-tables.ts';
import type { Table } from './suggest/table.ts';
import { unitsIn, type StatedUnit } from './suggest/units-in.ts';
import { zoneGuess } from './suggest/zone-guess.ts';

/** Where in an answer the times and the weather seem to be: by names, and by what the values can be. */
export function suggestMapping(answer: JsonValue): Suggestion {
	const tables = [...columnTables(answer), ...rowTables(answer), ...seriesTable(answer)];
	return suggestFrom(tables, unitsIn(answer), {
		...zoneGuess(answer),
		issued: issuedGuess(answer),
		station: stationGuess(answer)
	});
}

export function suggestCsvMapping(table: CsvTable): Suggestion {
	const extras = { ...zoneGuess(null), issued: undefined, station: undefined };
	return suggestFrom([csvAsTable(table)], new Map(), extras);
}

const NOTHING =
	'No times with temperatures beside them were found in this answer; look whether the address is the right one, and choose the places by hand if it is.';

function suggestFrom(
	tables: readonly Table[],
	units: ReadonlyMap<string, StatedUnit>,
	extras: Extras
): Suggestion {
	const [best] = tables
		.map((table) => understand(table, units))
		.filter((each) => each !== null)
		.toSorted((a, b) => b.score - a.score);
	if (!best) return { mapping: null, guesses: [], words: [NOTHING] };
	return { ...mappingFrom(best, extras), guesses: guessesOf(best) };
}

function understand(table: Table, units: ReadonlyMap<string, StatedUnit>): Understood | null {
	const time = timeOf(table);
	const candidates = candidatesOf(table, units);
	const hasOwnTimes = table.leaves.every(({ timePath }) => timePath !== null);
	if (!time && !hasOwnTimes) return null;
	const has = (role: 'air' | 'min' | 'max') => (candidates.get(role)?.length ?? 0) > 0;
	if (!has('air') && !(has('min') && has('max'))) return null;
	const roles = [...candidates.values()].filter(({ length }) => length > 0).length;
	const length = table.leaves[0]?.values.length ?? 0;
	// A mean tells more than a range, and a long record more than a short one.
	return { table, time, candidates, score: roles + (has('air') ? 10 : 0) + length / 100 };
}

function guessesOf({ time, candidates }: Understood): Suggestion['guesses'] {
	const ofValues = [...candidates.values()].flat().map(toGuess);
	if (!time) return ofValues;
	const { path, form, leaf } = time;
	const sample = sampleOf(leaf.values);
	return [{ role: 'time', path, unit: form, why: 'all its values are times', sample }, ...ofValues];
}
