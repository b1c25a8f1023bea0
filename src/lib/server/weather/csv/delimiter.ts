import { dateShape } from '../cells/dates.ts';
import { parseText, type Parsed } from './records.ts';

export const DELIMITERS = [',', ';', '\t', '|'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** A head of the file read with one delimiter. */
export interface Reading extends Parsed {
	delimiter: Delimiter;
	/** Cells of the common row; 1 where nothing is separated. */
	width: number;
	/** Rows of that width with a date in one and the same column. */
	dated: number;
	alike: number;
}

/**
 * The delimiter that gives most rows of one width with a date in one column. Counting delimiters
 * alone takes `date;temp` with decimal commas for comma-separated.
 */
export function chooseDelimiter(text: string, chosen: Delimiter | null): Reading {
	// One that is nowhere in the text separates nothing; the first stands where none does.
	const found = DELIMITERS.filter((each, index) => index === 0 || text.includes(each));
	const readings = (chosen ? [chosen] : found).map((delimiter) => readWith(text, delimiter));
	const [best, ...rest] = readings;
	if (!best) throw new RangeError('there must be a delimiter to choose from');
	return rest.reduce((leader, reading) => (isBetter(reading, leader) ? reading : leader), best);
}

function isBetter(a: Reading, b: Reading): boolean {
	if (a.dated !== b.dated) return a.dated > b.dated;
	if (a.alike !== b.alike) return a.alike > b.alike;
	return a.width > b.width;
}

function readWith(text: string, delimiter: Delimiter): Reading {
	const parsed = parseText(text, delimiter);
	const rows = parsed.records.map(({ cells }) => cells).filter((cells) => cells.length > 1);
	const width = commonWidth(rows);
	const alike = rows.filter((cells) => cells.length === width);
	return { ...parsed, delimiter, width, alike: alike.length, dated: mostDates(alike, width) };
}

function commonWidth(rows: readonly string[][]): number {
	const counts = new Map<number, number>();
	for (const { length } of rows) counts.set(length, (counts.get(length) ?? 0) + 1);
	return [...counts].toSorted(([, a], [, b]) => b - a)[0]?.[0] ?? 1;
}

function mostDates(rows: readonly string[][], width: number): number {
	const columns = Math.min(width, 40);
	const counts = Array.from({ length: columns }, (_, column) =>
		rows.reduce((sum, cells) => sum + (dateShape(cells[column] ?? '') ? 1 : 0), 0)
	);
	return Math.max(0, ...counts);
}
