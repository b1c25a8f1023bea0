import type { z } from 'zod';
import { isIsoDate, type IsoDate } from '#lib/model/calendar.ts';
import type { Hole } from '#lib/model/reading.ts';
import { readTable, type TableRow } from './csv-table.ts';
import { aheadReason } from './not-ahead.ts';
import { readingInput, type NewReading } from './reading-input.ts';
import { HEADER, LENGTHS } from './reading-rows.ts';

/**
 * Columns of other tables of readings: `date` is the day, rows of one `reading` belong together, the
 * rest is not stored.
 */
const ALSO_KNOWN = ['date', 'lake', 'qc', 'reading'];

/** Marks of a measurement that its own keepers do not trust. */
const DISTRUSTED = /spike|suspect_value/;

export interface LineProblem {
	line: number;
	reason: string;
}

export interface ParsedReadings {
	readings: NewReading[];
	/** Why the file is refused. */
	problems: LineProblem[];
	/** Rows that the file itself marks as doubtful; they are not taken. */
	leftOut: LineProblem[];
}

/** All readings of a CSV text, or why it cannot be taken. None is after `today`, where that is told. */
export function parseReadings(text: string, today: IsoDate | null): ParsedReadings {
	const table = readTable(text);
	const problems = [...table.problems, ...headerProblems(table.header, table.rows)];
	if (problems.length > 0) return { readings: [], problems, leftOut: [] };
	const doubtful = table.rows.filter(({ cells }) => DISTRUSTED.test(cells.get('qc') ?? ''));
	const leftOut = doubtful.map(({ line, cells }) => ({
		line,
		reason: `marked ${cells.get('qc') ?? ''}`
	}));
	const groups = new Map<string, Draft>();
	for (const row of table.rows.filter((row) => !doubtful.includes(row))) {
		problems.push(...addRow(groups, row, today));
	}
	const readings: NewReading[] = [];
	for (const { line, ...draft } of groups.values()) {
		const parsed = readingInput.safeParse(draft);
		if (parsed.success) readings.push(parsed.data);
		else problems.push({ line, reason: describe(parsed.error) });
	}
	return { readings, problems: problems.toSorted((a, b) => a.line - b.line), leftOut };
}

interface Draft {
	line: number;
	on: string;
	place: string | null;
	kind: string;
	holes: Partial<Hole>[];
	core: string | null;
	by: string | null;
	secondHand: boolean;
	remark: string | null;
}

function headerProblems(header: readonly string[], rows: readonly TableRow[]): LineProblem[] {
	const has = (name: string) => header.includes(name);
	const unknown = header.filter((name) => ![...HEADER, ...ALSO_KNOWN].includes(name));
	const lakes = new Set(rows.map(({ cells }) => cells.get('lake') ?? ''));
	const reasons = [
		...(has('on') || has('date') ? [] : ['the header has no column "on" or "date"']),
		...unknown.map((name) => `column "${name}" is not known; known are ${HEADER.join(', ')}`),
		...(lakes.size > 1
			? [`the rows are of ${lakes.size} lakes; keep those of one and send it again`]
			: []),
		...(rows.length > 0 ? [] : ['the file has no rows below its header'])
	];
	return reasons.map((reason) => ({ line: 1, reason }));
}

function addRow(
	groups: Map<string, Draft>,
	{ line, cells }: TableRow,
	today: IsoDate | null
): LineProblem[] {
	const cell = (name: string) => cells.get(name) || null;
	const on = cell('on') ?? cell('date') ?? '';
	if (!isIsoDate(on)) return [{ line, reason: `"${on}" is not a day written YYYY-MM-DD` }];
	const ahead = today === null ? null : aheadReason(on, today);
	if (ahead !== null) return [{ line, reason: ahead }];
	const lengths = LENGTHS.map((name) => ({ name, cell: cell(`${name}_cm`) }));
	const wrong = lengths.filter(({ cell }) => cell !== null && toMetres(cell) === null);
	if (wrong.length > 0) {
		return wrong.map(({ name, cell }) => ({
			line,
			reason: `${name}_cm is "${cell}", which is not a number`
		}));
	}
	const told = cell('secondhand')?.toLowerCase() ?? 'no';
	if (!['yes', 'no'].includes(told)) {
		return [{ line, reason: `secondhand is "${cell('secondhand')}", which is neither yes nor no` }];
	}
	const kind = cell('kind') ?? 'measured';
	const key = JSON.stringify([on, cell('place'), kind, told, cell('reading')]);
	const draft = groups.get(key) ?? {
		line,
		on,
		place: cell('place'),
		kind,
		holes: [],
		core: null,
		by: null,
		secondHand: told === 'yes',
		remark: null
	};
	const known = lengths.filter(({ cell }) => cell !== null);
	if (known.length > 0) {
		draft.holes.push(
			Object.fromEntries(known.map(({ name, cell }) => [`${name}_m`, toMetres(cell ?? '')]))
		);
	}
	draft.core ??= cell('core');
	draft.by ??= cell('by');
	draft.remark ??= cell('remark');
	groups.set(key, draft);
	return [];
}

function toMetres(cell: string): number | null {
	// A decimal comma can only stand in a file whose cells are not parted by commas.
	const plain = cell.replace(',', '.');
	return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? rounded(Number(plain) / 100) : null;
}

function describe(error: z.ZodError): string {
	return error.issues.map(({ path, message }) => `${path.join('.')} ${message}`).join('; ');
}

/** Takes off what the division by 100 adds in the last binary digits. */
function rounded(length_m: number): number {
	return Number(length_m.toFixed(7));
}
