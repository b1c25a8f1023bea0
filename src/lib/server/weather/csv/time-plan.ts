import type { ColumnGuess, CsvOptions } from './contract.ts';
import { decideDateForm } from './date-form.ts';
import { DATE_FORMS, type DateForm } from '../cells/dates.ts';
import type { Heading } from '../cells/header-roles.ts';
import { headingUnit } from '../cells/header-units.ts';
import type { Layout } from './layout.ts';

import { paceOf, type Pace } from './pace.ts';
import { inQuotes } from '../cells/quote.ts';
import type { RowProblem } from './problem.ts';
import { rowFits, type CsvRecord } from './records.ts';
import { wallSeconds } from '../cells/stamp-time.ts';
import { dateText, rowStamp } from './row-time.ts';
import { findClock, findTimeColumns, type TimeColumns } from './time-columns.ts';
import { DATE_PARTS } from '../cells/units.ts';
import type { ClockKind } from '../cells/zone.ts';

/** How the time of a row is read. */
export interface TimePlan {
	columns: TimeColumns;
	form: DateForm;
	clockKind: ClockKind;
	pace: Pace;
}

export interface TimeAttempt {
	columns: TimeColumns | null;
	form: DateForm | null;
	plan: TimePlan | null;
	problem: RowProblem | null;
}

export function planTime(
	layout: Layout,
	headings: readonly Heading[],
	options: CsvOptions
): TimeAttempt {
	const attempt: TimeAttempt = { columns: null, form: null, plan: null, problem: null };
	const rows = layout.rows.filter(({ cells }) => cells.length > 1);
	const columns = timeColumns(layout, headings, rows, options.columns ?? []);
	if (!columns) return { ...attempt, problem: noDates(layout) };
	const header = columns.date.map((index) => layout.header[index] ?? '').join(', ');
	const cells = rows.map((row) => ({ text: dateText(row.cells, columns), line: row.line }));
	const form = decideDateForm(cells, header, chosenForm(columns, options));
	if (typeof form !== 'string') return { ...attempt, columns, problem: form };
	const pace = paceOfRows(layout, rows, columns, form);
	if ('reason' in pace) return { ...attempt, columns, form, problem: pace };
	const clockKind = clockKindOf(layout, columns);
	return { columns, form, plan: { columns, form, clockKind, pace }, problem: null };
}

function timeColumns(
	{ header }: Layout,
	headings: readonly Heading[],
	rows: readonly CsvRecord[],
	corrections: readonly ColumnGuess[]
): TimeColumns | null {
	const dates = corrections.filter(({ role }) => role === 'date' || role === 'time');
	const clock = corrections.find(({ role }) => role === 'clock')?.index ?? null;
	const taken = new Set(corrections.map(({ index }) => index));
	const open = headings.map((heading, index) => ({ ...heading, isTaken: taken.has(index) }));
	if (dates.length === 0) {
		const found = findTimeColumns(header, open, rows);
		return found && { ...found, clock: clock ?? found.clock };
	}
	const parts = DATE_PARTS.map((part) => dates.find(({ unit }) => unit === part)?.index ?? -1);
	if (parts.every((index) => index >= 0)) {
		return { date: parts, clock: clock ?? findClock(null, open, rows) };
	}
	const index = dates[0]?.index ?? 0;
	return { date: [index], clock: clock ?? findClock(index, open, rows) };
}

function chosenForm({ date }: TimeColumns, { dateForm, columns }: CsvOptions): DateForm | null {
	if (date.length > 1) return 'Y-m-d';
	const unit = columns?.find(({ index }) => index === date[0])?.unit ?? null;
	return dateForm ?? DATE_FORMS.find((form) => form === unit) ?? null;
}

function noDates({ header, headerLine }: Layout): RowProblem {
	return {
		line: Math.max(1, headerLine),
		reason:
			`no column was recognised as the date among ${inQuotes(header.join(', '))}; ` +
			'name one date and write it as 2024-01-31, or choose it'
	};
}

function paceOfRows(
	{ header, headerLine }: Layout,
	rows: readonly CsvRecord[],
	columns: TimeColumns,
	form: DateForm
): Pace | RowProblem {
	const stamps = rows
		.filter(({ cells }) => rowFits(cells, header.length))
		.map(({ cells, line }) => ({ stamp: rowStamp(cells, columns, form), line }));
	const moments = stamps
		.map(({ stamp }) => stamp)
		.filter((stamp) => typeof stamp !== 'string')
		.map((stamp) => ({
			wall_s: wallSeconds(stamp) - (stamp.offset_s ?? 0),
			hasClock: stamp.second !== null
		}));
	const [first] = stamps;
	if (moments.length === 0) {
		const reason =
			typeof first?.stamp === 'string' ? first.stamp : 'no row has a date that can be read';
		return { line: first?.line ?? Math.max(1, headerLine), reason };
	}
	const pace = paceOf(moments);
	return typeof pace === 'string' ? { line: first?.line ?? 1, reason: pace } : pace;
}

function clockKindOf({ header, rows }: Layout, { date, clock }: TimeColumns): ClockKind {
	const names = [...date, ...(clock === null ? [] : [clock])]
		.map((index) => header[index] ?? '')
		.join(' ')
		.replace(/_/g, ' ');
	if (/\b(utc|gmt|zulu)\b/i.test(names)) return 'utc';
	if (/\b(lst|standard time)\b/i.test(names)) return 'standard';
	const zone = header.findIndex((name) => ZONE.test(headingUnit(name).name));
	const isUtc = (cells: readonly string[]) => /^(utc|gmt|z)$/i.test(cells[zone] ?? '');
	return zone >= 0 && rows.every(({ cells }) => cells.length === 1 || isUtc(cells))
		? 'utc'
		: 'local';
}

const ZONE = /^(time ?zone|tz|zone|zeitzone|aikavyohyke|tidszon)$/;

/** Names of zones are not unique, and some change with the season: only UTC and LST are read. */
export function zoneWarnings({ header }: Layout, { columns, plan }: TimeAttempt): string[] {
	if (plan?.pace.step !== 'hourly' || plan.clockKind !== 'local') return [];
	const indexes = [...(columns?.date ?? []), columns?.clock ?? -1];
	return indexes
		.map((index) => header[index] ?? '')
		.filter((name) =>
			/\b([ECMP][SD]T|AK[SD]T|A[SD]T|N[SD]T|CES?T|EES?T|WES?T|MES?Z|MSK)\b/.test(name)
		)
		.map(
			(name) =>
				`column ${inQuotes(name)} names a time zone, but is read as the lake's own local time; write offsets such as -05:00 behind the times if that is wrong`
		);
}
