import type { CsvOptions, ObservedDay, ObservedHour } from './contract.ts';
import { DayRows } from './day-rows.ts';
import { HourRows } from './hour-rows.ts';
import { MOST_ENTRIES } from './ledger.ts';
import type { CsvPlan } from './plan.ts';
import { inQuotes } from '../cells/quote.ts';
import type { RowProblem } from './problem.ts';
import { rowFits, type CsvRecord } from './records.ts';
import { isOtherOrder, rowStamp } from './row-time.ts';
import { isGap, rowValues, type RowValues } from './row-values.ts';
import { otherStation } from './station.ts';
import { TemperatureDoubt } from './temperature-doubt.ts';
import { dateShape, type Stamp } from '../cells/dates.ts';
import { LakeClock } from '../cells/zone.ts';

/** Turns records into days or hours by a plan, and says of every line that it can't use why. */
export class RowReader {
	/** What condemns the whole file. */
	fatal: RowProblem | null = null;
	accepted = 0;
	withTemperature = 0;
	readonly #plan: CsvPlan;
	readonly #rows: DayRows | HourRows;
	readonly #doubt: TemperatureDoubt;
	readonly #header: string;
	#rejected: RowProblem[] = [];
	#firstRejected: RowProblem | null = null;
	#gap: { from: number; to: number } | null = null;
	#gapLines = 0;
	#lastLine = 0;

	constructor(plan: CsvPlan, { timeZone, latest }: Pick<CsvOptions, 'timeZone' | 'latest'>) {
		this.#plan = plan;
		const { pace, clockKind } = plan.time;
		const clock = new LakeClock(timeZone, clockKind);
		this.#rows =
			pace.step === 'daily' ? new DayRows(clock, latest) : new HourRows(clock, pace, latest);
		this.#doubt = new TemperatureDoubt(plan);
		this.#header = plan.layout.header.join('\n');
	}

	/** Days or hours, or rejected lines, that wait to be drained. */
	get pending(): number {
		return Math.max(this.#rows.pending, this.#rejected.length);
	}

	take(record: CsvRecord): void {
		if (this.fatal) return;
		this.#lastLine = record.lastLine;
		if (record.cells.every((cell) => cell === '')) return;
		const read = this.#read(record);
		if (typeof read === 'string')
			this.#reject({ line: record.line, reason: read + merged(record) });
		else if (!this.fatal) this.#accept(record.line, read.stamp, read.values);
	}

	/** Closes what is open and judges the file as a whole. */
	finish(): void {
		this.#endGap();
		this.#note(this.#rows.finish());
		this.fatal ??= this.#doubt.finalVerdict(this.#lastLine) ?? this.#nothingFound();
	}

	/** Why nothing of what was read so far could be used, where that is so. */
	nothingUsable(): RowProblem | null {
		return this.accepted === 0 && this.#gapLines === 0 ? this.#nothingFound() : null;
	}

	drain(): { days: ObservedDay[]; hours: ObservedHour[]; rejected: RowProblem[] } {
		const rejected = this.#rejected.splice(0);
		return this.#rows instanceof DayRows
			? { days: this.#rows.drain(), hours: [], rejected }
			: { days: [], hours: this.#rows.drain(), rejected };
	}

	#read({ cells, line, lastLine }: CsvRecord): { stamp: Stamp; values: RowValues } | string {
		const { layout, time, station } = this.#plan;
		if (!rowFits(cells, layout.header.length)) return this.#misfit(cells);
		if (lastLine > line && this.#hidesRow(cells))
			return 'other rows are swallowed by a cell of this row';
		if (this.#isHeader(cells)) return 'the headings stand here again; remove the line';
		const name = station ? (cells[station.index] ?? '') : '';
		if (station && name !== station.name) return otherStation(name, station.name);
		const stamp = rowStamp(cells, time.columns, time.form);
		if (typeof stamp === 'string') {
			if (isOtherOrder(cells, time.columns, time.form)) this.fatal = otherOrder(line, stamp);
			return stamp;
		}
		this.#doubt.noteCells(cells);
		const values = rowValues(cells, this.#plan);
		if (typeof values !== 'string') this.#doubt.note(values, stamp.day);
		this.fatal = this.#doubt.verdict(line);
		if (typeof values === 'string') return values;
		return this.#rows.isAhead(stamp) ? AHEAD : { stamp, values };
	}

	#accept(line: number, stamp: Stamp, values: RowValues): void {
		if (isGap(values)) return this.#extendGap(line);
		this.#endGap();
		if (this.#rows.isFull) {
			const reason = `the file has more than ${MOST_ENTRIES.toLocaleString('en')} rows; split it and import the parts one by one`;
			this.fatal = { line, reason };
			return;
		}
		this.accepted += 1;
		if (values.air !== null || (values.min !== null && values.max !== null))
			this.withTemperature += 1;
		this.#note(this.#rows.take(stamp, line, values));
	}

	#misfit(cells: readonly string[]): string {
		if (cells.length === 1)
			return `${inQuotes(cells[0] ?? '')} is not a row of the table; remove the line`;
		const { length } = this.#plan.layout.header;
		return `the row has ${cells.length} values under ${length} headings; give it one value a column`;
	}

	/** Notes of several lines are fine, as long as none of the lines is a row. */
	#hidesRow(cells: readonly string[]): boolean {
		const { delimiter, time } = this.#plan;
		const at = time.columns.date[0] ?? 0;
		const inner = cells.flatMap((cell) => cell.split('\n').slice(1));
		return inner.some((line) => dateShape(line.split(delimiter)[at] ?? '') !== null);
	}

	#isHeader(cells: readonly string[]): boolean {
		const { header, headerLine } = this.#plan.layout;
		return (
			headerLine > 0 &&
			cells[0] === header[0] &&
			cells.slice(0, header.length).join('\n') === this.#header
		);
	}

	#reject(problem: RowProblem): void {
		this.#endGap();
		this.#firstRejected ??= problem;
		this.#rejected.push(problem);
	}

	#note(problem: RowProblem | null): void {
		if (problem) this.#rejected.push(problem);
	}

	#extendGap(line: number): void {
		this.#gapLines += 1;
		this.#gap = { from: this.#gap?.from ?? line, to: line };
	}

	#endGap(): void {
		if (!this.#gap) return;
		const { from, to } = this.#gap;
		this.#gap = null;
		const where = from === to ? 'this line has' : `lines ${from} to ${to} have`;
		this.#rejected.push({
			line: from,
			reason: `${where} no value in any column that is used: a gap`
		});
	}

	#nothingFound(): RowProblem | null {
		if (this.withTemperature > 0) return null;
		const first = this.#firstRejected;
		if (this.accepted > 0 || !first) {
			const line = Math.max(1, this.#plan.layout.headerLine);
			return {
				line,
				reason: 'no row has a temperature; choose the right column for it, or another file'
			};
		}
		return { line: first.line, reason: `no row can be used; the first one: ${first.reason}` };
	}
}

const AHEAD =
	'this is still to come, so that nobody has observed it; a forecast is taken from a weather source only';

function otherOrder(line: number, reason: string): RowProblem {
	return {
		line,
		reason: `${reason}; day and month change places in this file, so that none of its dates is certain; write all of them as 2024-01-31`
	};
}

function merged({ line, lastLine }: CsvRecord): string {
	return lastLine > line
		? `; a quotation mark joins lines ${line} to ${lastLine} into one row, close or remove it`
		: '';
}
