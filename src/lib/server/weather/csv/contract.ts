import type { IsoDate } from '#lib/model/calendar.ts';
import type { DayValues, WeatherHour } from '#lib/model/hours-to-days.ts';
import type { DateForm } from '../cells/dates.ts';
import type { Delimiter } from './delimiter.ts';
import type { Decimal } from '../cells/numbers.ts';
import type { RowProblem } from './problem.ts';
import type { ColumnRole } from '../cells/units.ts';

export type { ColumnRole, RowProblem };

export interface CsvOptions {
	/** IANA name of the lake's own time zone. */
	timeZone: string;
	/** Columns whose role or unit was corrected; the others stay as guessed. */
	columns?: readonly ColumnGuess[] | undefined;
	delimiter?: Delimiter | undefined;
	decimal?: Decimal | undefined;
	dateForm?: DateForm | undefined;
	/** What is later was not observed, and is left out; without it nothing is. */
	latest?: Latest | undefined;
}

/** The day under way at the lake, and the instant itself, in seconds since 1970 began in UTC. */
export interface Latest {
	on: IsoDate;
	at_s: number;
}

/** What a column is taken for, and why; handed back with another role or unit it is a correction. */
export interface ColumnGuess {
	index: number;
	header: string;
	role: ColumnRole;
	/** For a date column the form of its dates. */
	unit: string | null;
	sample: string[];
	why: string;
}

/** What was understood of a file. Where `ok` is false, `problems` say why no row can be taken. */
export interface CsvPreview {
	ok: boolean;
	problems: RowProblem[];
	encoding: string;
	delimiter: string;
	decimal: Decimal;
	/** 0 where there is no heading line. */
	headerLine: number;
	step: 'daily' | 'hourly';
	dateForm: string;
	columns: ColumnGuess[];
	/** The first ten rows as they stand. */
	rows: string[][];
	warnings: string[];
}

/** A day as the record gives it: a mean only where the record has one, nothing known of its hours. */
export type ObservedDay = DayValues;

/**
 * An hour by its start on the clock of the lake. A row belongs to the hour that its time falls in,
 * whatever the record means by its stamp; that shifts a record stamped at the end by one hour.
 */
export type ObservedHour = WeatherHour;

/** At most 500 days or hours. One that came before, in an earlier batch too, replaces that. */
export interface CsvBatch {
	days: ObservedDay[];
	hours: ObservedHour[];
	/** Lines that were not used, and lines that a later one replaced or repeated. */
	rejected: RowProblem[];
	/** Since the start of the file. */
	bytesRead: number;
	/**
	 * The last of `rejected` condemns the whole file, batches before included: it can't be read to
	 * its end, or what was found in it makes all its numbers doubtful. No batch follows.
	 */
	isFatal: boolean;
}
