import { readClock } from '../cells/clock.ts';
import { contradicts } from './date-form.ts';
import { readStamp, type DateForm, type Stamp } from '../cells/dates.ts';
import type { TimeColumns } from './time-columns.ts';

/** The text of a row's date; year, month and day in three columns are joined. */
export function dateText(cells: readonly string[], { date }: TimeColumns): string {
	const parts = date.map((index) => cells[index] ?? '');
	if (parts.length === 1) return parts[0] ?? '';
	const [year = '', month = '', day = ''] = parts.map((part) => part.replace(/\.0+$/, ''));
	return year === '' && month === '' && day === '' ? '' : `${year}-${month}-${day}`;
}

/** When a row was, in the record's own calendar; else the reason why that can't be told. */
export function rowStamp(
	cells: readonly string[],
	time: TimeColumns,
	form: DateForm
): Stamp | string {
	const stamp = readStamp(dateText(cells, time), form);
	if (typeof stamp === 'string' || time.clock === null) return stamp;
	const text = cells[time.clock] ?? '';
	if (text === '') return 'the time of day is missing; fill it in or remove the line';
	const clock = readClock(text.replace(/\.0+$/, ''));
	return typeof clock === 'string' ? clock : { day: stamp.day, ...clock };
}

/** A date that shows that day and month stand in the other order than was taken for the file. */
export function isOtherOrder(cells: readonly string[], time: TimeColumns, form: DateForm): boolean {
	return contradicts(dateText(cells, time), form);
}
