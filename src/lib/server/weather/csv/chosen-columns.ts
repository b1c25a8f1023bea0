import type { ColumnGuess } from './contract.ts';
import type { Heading } from '../cells/header-roles.ts';
import { inQuotes } from '../cells/quote.ts';
import type { RowProblem } from './problem.ts';
import { WORDS } from '../cells/role-words.ts';
import { isValueRole, unitsFor, type ValueRole } from '../cells/units.ts';

/** A column that holds a measured value, with what its heading says of the unit. */
export interface ValueColumn {
	index: number;
	header: string;
	role: ValueRole;
	unit: string | null;
	isChosen: boolean;
}

/** The columns with values that were chosen by hand; a unit left open is taken from the heading. */
export function chosenColumns(
	headers: readonly string[],
	headings: readonly Heading[],
	headerLine: number,
	corrections: readonly ColumnGuess[]
): { columns: ValueColumn[]; problems: RowProblem[] } {
	const line = Math.max(1, headerLine);
	const columns: ValueColumn[] = [];
	const reasons: string[] = [];
	for (const { index, role, unit } of corrections) {
		const header = headers[index];
		if (!isValueRole(role) || header === undefined) continue;
		const heading = headings[index];
		const stated = heading?.role === role ? heading.unit : null;
		const isKnown = unit === null || unitsFor(role).includes(unit);
		if (!isKnown) reasons.push(noSuchUnit(header, role, unit));
		columns.push({ index, header, role, unit: isKnown ? (unit ?? stated) : null, isChosen: true });
	}
	reasons.push(...chosenTwice(columns));
	return { columns, problems: reasons.map((reason) => ({ line, reason })) };
}

function noSuchUnit(header: string, role: ValueRole, unit: string): string {
	const units = unitsFor(role).join(', ');
	return `column ${inQuotes(header)}: ${inQuotes(unit)} is not a unit of ${WORDS[role]}; choose one of ${units}`;
}

function chosenTwice(chosen: readonly ValueColumn[]): string[] {
	const kind = ({ role, unit }: ValueColumn) => (unit?.endsWith('water') ? 'water' : role);
	return chosen.flatMap((column, at) => {
		const first = chosen.slice(0, at).find((other) => kind(other) === kind(column));
		if (!first) return [];
		const both = `columns ${inQuotes(first.header)} and ${inQuotes(column.header)}`;
		return [`${both} are both chosen as ${WORDS[column.role]}; set one of them to be ignored`];
	});
}
