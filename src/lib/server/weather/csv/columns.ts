import { WORDS } from '../cells/role-words.ts';
import { chosenColumns, type ValueColumn } from './chosen-columns.ts';
import type { ColumnGuess } from './contract.ts';
import type { Heading } from '../cells/header-roles.ts';
import { inQuotes } from '../cells/quote.ts';
import type { RowProblem } from './problem.ts';
import type { CsvRecord } from './records.ts';
import { isTemperatureRole, isValueRole, type ValueRole } from '../cells/units.ts';

export interface ValueColumns {
	columns: ValueColumn[];
	/** Why columns that could have been taken were not, by index. */
	left: Map<number, string>;
	problems: RowProblem[];
	warnings: string[];
}

const SEVERAL_MATTER: ReadonlySet<ValueRole> = new Set([
	'air',
	'min',
	'max',
	'precipitation',
	'snowfall'
]);

/** The columns with values: those chosen by hand, then for each open role the best heading. */
export function findValueColumns(
	headers: readonly string[],
	headings: readonly Heading[],
	rows: readonly CsvRecord[],
	headerLine: number,
	corrections: readonly ColumnGuess[]
): ValueColumns {
	const found: ValueColumns = { columns: [], left: new Map(), problems: [], warnings: [] };
	const chosen = chosenColumns(headers, headings, headerLine, corrections);
	found.columns.push(...chosen.columns);
	found.problems.push(...chosen.problems);
	const corrected = new Set(corrections.map(({ index }) => index));
	const open = headings
		.map((heading, index) => ({ heading, index, header: headers[index] ?? '' }))
		.filter(({ index }) => !corrected.has(index));
	const chosenRoles = new Set(found.columns.map(({ role }) => role));
	for (const { heading, index, header } of open) noteDoubt(found, heading, index, header);
	for (const role of rolesIn(open.map(({ heading }) => heading))) {
		const candidates = open.filter(({ heading }) => heading.role === role);
		if (chosenRoles.has(role)) leaveAll(found, candidates, 'another column was chosen for this');
		else takeBest(found, role, candidates, rows, headerLine);
	}
	return found;
}

interface Candidate {
	heading: Heading;
	index: number;
	header: string;
}

function noteDoubt(found: ValueColumns, { doubt }: Heading, index: number, header: string): void {
	if (doubt === null) return;
	found.left.set(index, doubt);
	found.warnings.push(
		`column ${inQuotes(header)} ${doubt} and is left out; choose what it is to use it`
	);
}

function rolesIn(headings: readonly Heading[]): ValueRole[] {
	return [...new Set(headings.map(({ role }) => role))].filter(isValueRole);
}

/** Columns without a single value give way to those with one. */
function withValues(candidates: readonly Candidate[], rows: readonly CsvRecord[]): Candidate[] {
	const filled = candidates.filter(({ index }) => rows.some(({ cells }) => cells[index]));
	return filled.length > 0 ? filled : [...candidates];
}

function takeBest(
	found: ValueColumns,
	role: ValueRole,
	candidates: readonly Candidate[],
	rows: readonly CsvRecord[],
	headerLine: number
): void {
	const isWater = ({ heading }: Candidate) => heading.unit?.endsWith('water') ?? false;
	// Fresh depth and water equivalent of snowfall stand side by side: one fills the other's gaps.
	const kinds =
		role === 'snowfall'
			? [candidates.filter(isWater), candidates.filter((candidate) => !isWater(candidate))]
			: [candidates];
	for (const kind of kinds) {
		const filled = withValues(kind, rows);
		const rank = Math.min(...filled.map(({ heading }) => heading.rank));
		const best = filled.filter(({ heading }) => heading.rank === rank);
		leaveAll(
			found,
			kind.filter((candidate) => !best.includes(candidate)),
			'another column says the same more clearly'
		);
		take(found, role, best, headerLine);
	}
}

function take(
	found: ValueColumns,
	role: ValueRole,
	best: readonly Candidate[],
	headerLine: number
): void {
	const [first, second] = sameInOtherUnits(found, best);
	if (!first) return;
	if (second && SEVERAL_MATTER.has(role)) {
		found.problems.push({
			line: Math.max(1, headerLine),
			reason:
				`columns ${inQuotes(first.header)} and ${inQuotes(second.header)} can both be ${WORDS[role]}; ` +
				'choose one and set the other to be ignored'
		});
	} else if (second) {
		found.left.set(second.index, 'another column was taken for this');
		found.warnings.push(
			`columns ${inQuotes(first.header)} and ${inQuotes(second.header)} can both be ${WORDS[role]}; the first is used`
		);
	}
	const { index, header, heading } = first;
	found.columns.push({ index, header, role, unit: heading.unit, isChosen: false });
}

/** Of columns that differ in their stated unit only, the metric one is enough. */
function sameInOtherUnits(found: ValueColumns, best: readonly Candidate[]): Candidate[] {
	const units = new Set(best.map(({ heading }) => heading.unit));
	const metric = best.find(({ heading }) => METRIC.has(heading.unit ?? ''));
	if (best.length < 2 || units.size < best.length || units.has(null) || !metric) return [...best];
	const others = best.filter((candidate) => candidate !== metric);
	leaveAll(found, others, `the same in another unit as ${inQuotes(metric.header)}`);
	return [metric];
}

function leaveAll(found: ValueColumns, candidates: readonly Candidate[], why: string): void {
	for (const { index } of candidates) found.left.set(index, why);
}

const METRIC = new Set(['°C', 'mm', 'mm water', 'cm', 'm/s']);

/** What to say where no column gives a temperature, or `null`. */
export function missingTemperature(
	columns: readonly ValueColumn[],
	headerLine: number
): RowProblem | null {
	const temperatures = columns.map(({ role }) => role).filter(isTemperatureRole);
	const has = (role: ValueRole) => temperatures.some((other) => other === role);
	if (has('air') || (has('min') && has('max'))) return null;
	const reason =
		temperatures.length === 0
			? 'no column was recognised as air temperature; name one temp_c or temp_f, or choose it'
			: "only one end of the day's temperatures is there; add a mean, or both the lowest and the highest";
	return { line: Math.max(1, headerLine), reason };
}
