import type { z } from 'zod';
import type { DayValues } from '#lib/model/hours-to-days.ts';
import { filesOf, LAKES_FILE, type FileProblem, type TidyFiles } from './folder.ts';
import { Ledger } from './ledger.ts';
import {
	eventRow,
	ownFreezeUpRow,
	ownIceRow,
	ownLakeRow,
	ownWeatherRow,
	type OwnLakeRow
} from './own-rows.ts';
import { readLake, type TidyLake } from './read-lake.ts';
import { dayOf } from './weather-rows.ts';

export interface ReadWinters {
	lakes: TidyLake[];
	/** Why nothing is taken. */
	problems: FileProblem[];
	/** Lines that are not taken while the rest is. */
	leftOut: FileProblem[];
}

const MOST_LAKES = 500;

/** What a tidy winters folder holds, or what has to be mended, file by file and line by line. */
export function readWinters(files: TidyFiles): ReadWinters {
	const ledger = new Ledger(files);
	const rows = ledger.table(LAKES_FILE, ownLakeRow, ['dataset', 'lake', 'lat', 'lon']);
	if (rows.length > MOST_LAKES) {
		ledger.refuse(LAKES_FILE, 0, `has ${rows.length} rows, but ${MOST_LAKES} are taken at most`);
	}
	if (ledger.problems.length > 0) return { lakes: [], ...ledger.findings };
	const datasets = [...new Set(rows.map(({ row }) => row.dataset))];
	const lakes = datasets.flatMap((dataset) =>
		readDataset(
			ledger,
			dataset,
			rows.filter(({ row }) => row.dataset === dataset)
		)
	);
	return { lakes: ledger.problems.length > 0 ? [] : lakes, ...ledger.findings };
}

interface LakeLine {
	line: number;
	row: OwnLakeRow;
}

function readDataset(ledger: Ledger, dataset: string, rows: LakeLine[]): TidyLake[] {
	const [first] = rows;
	if (!first) return [];
	if (!/^\w[\w .-]*$/.test(dataset)) {
		const reason = `column dataset: "${dataset}" cannot be the name of a folder`;
		ledger.refuse(LAKES_FILE, first.line, reason);
		return [];
	}
	const days = readDays(ledger, dataset);
	leaveStrangers(ledger, dataset, new Set(rows.map(({ row }) => row.lake)));
	const isOneLake = rows.some(({ row }) => row.site !== null);
	const groups = isOneLake ? [rows] : rows.map((row) => [row]);
	return groups.flatMap((group) => readLake(ledger, group, days) ?? []);
}

/** Rows of lakes that `lakes.csv` does not know are told of. */
function leaveStrangers(ledger: Ledger, dataset: string, codes: ReadonlySet<string>): void {
	const files = filesOf(dataset);
	const tables: [string, z.ZodType<{ lake: string }>][] = [
		[files.freezeUp, ownFreezeUpRow],
		[files.ice, ownIceRow],
		[files.events, eventRow]
	];
	for (const [file, schema] of tables) {
		if (!ledger.has(file)) continue;
		for (const { line, row } of ledger.table(file, schema, ['lake'])) {
			if (!codes.has(row.lake)) ledger.leave(file, line, `no lake "${row.lake}" in ${LAKES_FILE}`);
		}
	}
}

function readDays(ledger: Ledger, dataset: string): DayValues[] {
	const rows = ledger.table(filesOf(dataset).weather, ownWeatherRow, ['date', 'tmean_c']);
	const days = new Map(rows.map(({ row }) => [row.date, dayOf(row)]));
	return [...days.values()].filter(isAnythingKnown).toSorted((a, b) => (a.on < b.on ? -1 : 1));
}

function isAnythingKnown(day: DayValues): boolean {
	return Object.entries(day).some(([name, value]) => name !== 'on' && value !== null);
}
