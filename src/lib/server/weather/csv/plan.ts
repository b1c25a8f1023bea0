import type { CsvOptions } from './contract.ts';
import type { ValueColumn } from './chosen-columns.ts';
import { findValueColumns, missingTemperature } from './columns.ts';
import { decimalOf } from './decimal.ts';
import { chooseDelimiter, type Delimiter, type Reading } from './delimiter.ts';
import type { Encoding } from './encoding.ts';
import { readHead, type Head } from './head.ts';
import { headingsOf, headlessWarnings } from './headings.ts';
import type { Heading } from '../cells/header-roles.ts';
import { findLayout, type Layout } from './layout.ts';
import type { Decimal } from '../cells/numbers.ts';
import type { RowProblem } from './problem.ts';
import { rainWarnings, withRain } from './rain.ts';
import { findStation, type Station } from './station.ts';
import { problemOfLayout, problemOfReading } from './table-problems.ts';
import { planTime, zoneWarnings, type TimeAttempt, type TimePlan } from './time-plan.ts';
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
	const vote = decimalOf(layout, found.columns, reading.delimiter, options);
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
	const warnings = [
		...headlessWarnings(layout),
		...zoneWarnings(layout, time),
		...found.warnings,
		...units.warnings,
		...rainWarnings(columns, headings)
	];
	const table = { reading, layout, decimal, time, headings, columns, left };
	return { plan, problems, warnings, head, table };
}

function withoutTime(headings: readonly Heading[], { columns }: TimeAttempt): Heading[] {
	const taken = new Set([...(columns?.date ?? []), columns?.clock]);
	return headings.map((heading, index) =>
		taken.has(index) ? { ...heading, role: 'time' } : heading
	);
}
