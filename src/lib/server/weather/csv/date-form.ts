import { dateShape, leadingNumbers, type DateForm, type DateShape } from '../cells/dates.ts';
import { inQuotes } from '../cells/quote.ts';
import type { RowProblem } from './problem.ts';

export interface DateCell {
	text: string;
	line: number;
}

/** Lines in another form than the rest are rejected one by one up to this share; then the file is. */
const STRAY_SHARE = 0.05;

/** The one form that the dates of a record are written in, or why it can't be told. */
export function decideDateForm(
	cells: readonly DateCell[],
	header: string,
	chosen: DateForm | null
): DateForm | RowProblem {
	if (chosen) return chosen;
	const groups = byShape(cells.filter(({ text }) => text !== ''));
	const unread = groups.get(null) ?? [];
	groups.delete(null);
	const [main, second] = [...groups].toSorted(([, a], [, b]) => b.length - a.length);
	if (!main || unread.length > main[1].length) return unknownForm(unread, header);
	const [shape, alike] = main;
	if (second && second[1].length > STRAY_SHARE * cells.length) return mixedForms(alike, second[1]);
	if (shape === 'Y-m-d' && isYearDayMonth(alike)) return yearDayMonth(alike);
	return shape === 'numeric' ? dayOrder(alike, header) : (shape ?? unknownForm(alike, header));
}

function byShape(cells: readonly DateCell[]): Map<DateShape | null, DateCell[]> {
	const groups = new Map<DateShape | null, DateCell[]>();
	for (const cell of cells) {
		const shape = dateShape(cell.text);
		const group = groups.get(shape);
		if (group) group.push(cell);
		else groups.set(shape, [cell]);
	}
	mergeEpochs(groups);
	return groups;
}

/** Some seconds since 1970 can be read as year, month, day and hour, but not all of a column. */
function mergeEpochs(groups: Map<DateShape | null, DateCell[]>): void {
	const compact = groups.get('Ymd') ?? [];
	for (const epoch of ['epoch s', 'epoch ms'] as const) {
		const cells = groups.get(epoch);
		if (!cells || !compact.every(({ text }) => /^\d{10,12}$/.test(text))) continue;
		groups.set(epoch, [...cells, ...compact]);
		groups.delete('Ymd');
		return;
	}
}

/** True where the numbers of a date prove that it is of the other order than `form`. */
export function contradicts(text: string, form: DateForm): boolean {
	const numbers = leadingNumbers(text);
	if (!numbers) return false;
	if (form === 'd/m/Y') return numbers[0] <= 12 && numbers[1] > 12;
	return form === 'm/d/Y' && numbers[0] > 12 && numbers[1] <= 12;
}

function dayOrder(cells: readonly DateCell[], header: string): DateForm | RowProblem {
	const dayFirst = cells.find(({ text }) => contradicts(text, 'm/d/Y'));
	const monthFirst = cells.find(({ text }) => contradicts(text, 'd/m/Y'));
	if (dayFirst && monthFirst) return mixedForms([dayFirst], [monthFirst]);
	if (dayFirst) return 'd/m/Y';
	if (monthFirst) return 'm/d/Y';
	if (/\bd{1,2}[-/. ]?m{1,2}\b/i.test(header)) return 'd/m/Y';
	if (/\bm{1,2}[-/. ]?d{1,2}\b/i.test(header)) return 'm/d/Y';
	const [first] = cells;
	if (first?.text.includes('.')) return 'd/m/Y';
	return {
		line: first?.line ?? 1,
		reason:
			`${inQuotes(first?.text ?? '')} can be day before month or month before day, and no line decides it; ` +
			'choose d/m/Y or m/d/Y for the date column, or write dates as 2024-01-31'
	};
}

/** One such date is a slip of the pen; several are another order. */
function isYearDayMonth(cells: readonly DateCell[]): boolean {
	const dayBefore = cells.filter(({ text }) =>
		/^\d{4}\D(1[3-9]|[23]\d)\D(0?\d|1[0-2])\b/.test(text)
	);
	return dayBefore.length > 1 && dayBefore.length > STRAY_SHARE * cells.length;
}

function yearDayMonth(cells: readonly DateCell[]): RowProblem {
	const [first] = cells;
	return {
		line: first?.line ?? 1,
		reason: 'the dates have the day before the month behind the year; write them as 2024-01-31'
	};
}

function mixedForms(main: readonly DateCell[], other: readonly DateCell[]): RowProblem {
	const [a, b] = [main[0], other[0]];
	return {
		line: b?.line ?? 1,
		reason:
			`the dates are written in more than one form: ${inQuotes(a?.text ?? '')} on line ${a?.line ?? 1}, ` +
			`${inQuotes(b?.text ?? '')} on line ${b?.line ?? 1}; write all of them as 2024-01-31`
	};
}

function unknownForm(cells: readonly DateCell[], header: string): RowProblem {
	const first = cells[0] ?? { text: '', line: 1 };
	const column = `column ${inQuotes(header)}: ${inQuotes(first.text)}`;
	const shape = oddShape(first.text);
	return {
		line: first.line,
		reason: shape
			? `${column} ${shape}`
			: `${column} is not a date in a form that can be read; write dates as 2024-01-31`
	};
}

function oddShape(text: string): string | null {
	if (/^[1-7]\d{4}(\.\d+)?$/.test(text)) {
		return 'looks like the serial number of a day in a spreadsheet; give the column the date format YYYY-MM-DD and save again';
	}
	if (isShortYear(text)) {
		return 'has a year of two digits, which could be any century; write years with four digits';
	}
	return null;
}

function isShortYear(text: string): boolean {
	return (
		/^\d{1,2}([-/.])\d{1,2}\1\d{2}(?!\d)/.test(text) ||
		/^\d{1,2}[-\s][a-z]{3,9}[-\s]\d{2}(?!\d)/i.test(text)
	);
}

/** Shapes that are dates without a doubt; plain digits may be anything. */
export function isTextShape(shape: DateShape | null): boolean {
	return shape !== null && !shape.startsWith('epoch') && shape !== 'Ymd';
}
