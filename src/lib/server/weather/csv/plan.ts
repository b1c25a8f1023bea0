import type { CsvOptions } from './contract.ts';
import { findValueColumns, missingTemperature, type ValueColumn } from './columns.ts';
import { dateShape } from './dates.ts';
import { chooseDelimiter, type Delimiter, type Reading } from './delimiter.ts';
import type { Encoding } from './encoding.ts';
import { MOST_COLUMNS, readHead, type Head } from './head.ts';
import { headingOf, type Heading } from './header-roles.ts';
import { findLayout, type Layout } from './layout.ts';
import { voteDecimal, type Decimal } from './numbers.ts';

import { inQuotes, type RowProblem } from './problem.ts';
import { rowFits } from './records.ts';
import { findStation, type Station } from './station.ts';
import { planTime, type TimeAttempt, type TimePlan } from './time-plan.ts';
import { settleUnits } from './value-units.ts';

/** Everything that has to be decided before a row can be read. */
export interface CsvPlan {
	encoding: Encoding;
	delimiter: Delimiter;
	decimal: Decimal;
	layout: Layout;
	time: TimePlan;
	columns: (ValueColumn & { unit: string })[];
	station: Station | null;
}

/** A plan, or how far it came: a preview shows what was understood beside what was not. */
export interface PlanAttempt {
	plan: CsvPlan | null;
	problems: RowProblem[];
	warnings: string[];
	head: Head;
	table: Table | null;
}

export interface Table {
	reading: Reading;
	layout: Layout;
	decimal: Decimal;
	time: TimeAttempt;
	headings: Heading[];
	columns: (ValueColumn & { unit: string })[];
	/** Why columns are not used, by index. */
	left: Map<number, string>;
}

const MOST_STRAYS = 0.2;

/** Decides from the head of a file how all of it is read. */
export function planCsv(bytes: Uint8Array, options: CsvOptions): PlanAttempt {
	const head = readHead(bytes);
	const refused = (problem: RowProblem): PlanAttempt => ({
		plan: null,
		problems: [problem],
		warnings: [],
		head,
		table: null
	});
	if (head.problem) return refused(head.problem);
	const reading = chooseDelimiter(head.text, options.delimiter ?? null);
	const problem = problemOfReading(reading, head);
	if (problem) return refused(problem);
	const layout = findLayout(reading);
	const misfit = problemOfLayout(layout, reading);
	return misfit ? refused(misfit) : planTable(head, reading, layout, options);
}

function planTable(head: Head, reading: Reading, layout: Layout, options: CsvOptions): PlanAttempt {
	const { header, headerLine, rows } = layout;
	const headings = headingsOf(layout);
	const time = planTime(layout, headings, options);
	const found = findValueColumns(
		header,
		withoutTime(headings, time),
		rows,
		headerLine,
		options.columns ?? []
	);
	const vote = decimalOf(layout, found.columns, options);
	const units = settleUnits(found.columns, headings, rows, vote.decimal, headerLine);
	const station = findStation(layout);
	const columns = withRain(units.columns, headings);
	const problems = [
		time.problem,
		...found.problems,
		missingTemperature(found.columns, headerLine),
		vote.problem,
		...units.problems,
		station && 'reason' in station ? station : null
	].filter((problem) => problem !== null);
	const { delimiter } = reading;
	const { decimal } = vote;
	const plan: CsvPlan | null =
		problems.length === 0 && time.plan && !(station && 'reason' in station)
			? { encoding: head.encoding, delimiter, decimal, layout, time: time.plan, columns, station }
			: null;
	const left = new Map([...found.left, ...units.left]);
	const warnings = [...found.warnings, ...units.warnings, ...rainWarnings(columns, headings)];
	const table = { reading, layout, decimal, time, headings, columns, left };
	return { plan, problems, warnings, head, table };
}

function problemOfReading({ failure, width, records }: Reading, head: Head): RowProblem | null {
	const lines = head.text.split('\n').length;
	// A cell of several lines may go on behind the head.
	if (failure && !(head.isCut && failure.line > lines - 20)) return failure;
	if (width > MOST_COLUMNS) {
		return {
			line: records[0]?.line ?? 1,
			reason: `the rows have ${width} columns, more than ${MOST_COLUMNS}; keep the date and the weather only`
		};
	}
	if (width > 1) return null;
	return {
		line: 1,
		reason:
			'no columns were found: no line is divided by commas, semicolons, tabs or "|"; save the table as CSV with one of them'
	};
}

function problemOfLayout(
	{ header, headerLine, rows }: Layout,
	reading: Reading
): RowProblem | null {
	const tabular = rows.filter(({ cells }) => cells.length > 1);
	const [first] = tabular;
	if (!first) {
		return {
			line: Math.max(1, headerLine),
			reason: 'there are headings but no rows below them; choose a file with weather in it'
		};
	}
	const misfits = tabular.filter(({ cells }) => !rowFits(cells, header.length));
	const [misfit] = misfits;
	if (!misfit || misfits.length <= Math.max(tabular.length * MOST_STRAYS, 1)) return null;
	const isComma = reading.delimiter === ',' && misfit.cells.length > header.length;
	return {
		line: misfit.line,
		reason:
			`the row has ${misfit.cells.length} values under ${header.length} headings` +
			(isComma
				? '; if the comma is the decimal mark too, save the table with semicolons between the columns'
				: '; give every column one heading and every row all its columns')
	};
}

function headingsOf({ header, headerLine, unitLine, rows }: Layout): Heading[] {
	const headings = header.map((name, index) => headingOf(name, unitLine[index] ?? ''));
	if (headerLine > 0) return settleSnow(headings);
	// Beside a date, the only column of a table without headings can be nothing but the temperature.
	const isDated = rows[0]?.cells.some((cell) => dateShape(cell) !== null) ?? false;
	if (headings.length !== 2 || !isDated) return headings;
	const why = 'the only column beside the date';
	return headings.map((heading) => ({ ...heading, role: 'air', rank: 3, why }));
}

/** Beside a depth of the snow on land, a column that is called "snow" is what fell. */
function settleSnow(headings: readonly Heading[]): Heading[] {
	const hasDepth = headings.some(({ role }) => role === 'landSnow');
	return headings.map((heading) =>
		heading.isSnow && hasDepth
			? { ...heading, role: 'snowfall', rank: 2, doubt: null, why: 'beside a snow depth' }
			: heading
	);
}

function withoutTime(headings: readonly Heading[], { columns }: TimeAttempt): Heading[] {
	const taken = new Set([...(columns?.date ?? []), columns?.clock]);
	return headings.map((heading, index) =>
		taken.has(index) ? { ...heading, role: 'time' } : heading
	);
}

function decimalOf(
	{ rows }: Layout,
	columns: readonly ValueColumn[],
	options: CsvOptions
): { decimal: Decimal; problem: RowProblem | null } {
	const cells = rows.flatMap((row) => columns.map(({ index }) => row.cells[index] ?? ''));
	const { decimal, strayShare } = voteDecimal(cells);
	if (options.decimal) return { decimal: options.decimal, problem: null };
	if (strayShare <= MOST_STRAYS) return { decimal, problem: null };
	const other = decimal === '.' ? ',' : '.';
	const stray = rows.find((row) => columns.some(({ index }) => row.cells[index]?.includes(other)));
	const reason = `some numbers have "." and some "," as their decimal mark, here "${other}"; write all of them alike`;
	return { decimal, problem: { line: stray?.line ?? 1, reason } };
}

type Settled = ValueColumn & { unit: string };

/** Rain alone beside snowfall: together they are the precipitation. */
function withRain(columns: readonly Settled[], headings: readonly Heading[]): Settled[] {
	const hasSnow = columns.some(({ role }) => role === 'snowfall');
	return columns.map((column) => {
		const isRain = isRainAlone(column, headings) && hasSnow && /^(mm|in)$/.test(column.unit);
		return isRain ? { ...column, unit: `${column.unit} rain` } : column;
	});
}

function rainWarnings(columns: readonly Settled[], headings: readonly Heading[]): string[] {
	return columns
		.filter((column) => isRainAlone(column, headings))
		.map(({ header, unit }) =>
			unit.endsWith('rain')
				? `column ${inQuotes(header)} is taken as rain alone, and the snowfall is added to it`
				: `column ${inQuotes(header)} is taken as all precipitation, melted snow included; set it to be ignored if it is rain alone`
		);
}

function isRainAlone(
	{ role, index, isChosen }: ValueColumn,
	headings: readonly Heading[]
): boolean {
	return role === 'precipitation' && !isChosen && headings[index]?.rank === 3;
}
