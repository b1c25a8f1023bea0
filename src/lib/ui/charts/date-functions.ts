/**
 * What the chart library's date adapter takes from date-fns, but for reading written dates: our charts
 * give days, which `midnight.ts` reads, and the reader of forms is a tenth of all that they weigh.
 */
export {
	addDays,
	addHours,
	addMilliseconds,
	addMinutes,
	addMonths,
	addQuarters,
	addSeconds,
	addWeeks,
	addYears,
	differenceInDays,
	differenceInHours,
	differenceInMilliseconds,
	differenceInMinutes,
	differenceInMonths,
	differenceInQuarters,
	differenceInSeconds,
	differenceInWeeks,
	differenceInYears,
	endOfDay,
	endOfHour,
	endOfMinute,
	endOfMonth,
	endOfQuarter,
	endOfSecond,
	endOfWeek,
	endOfYear,
	format,
	isValid,
	startOfDay,
	startOfHour,
	startOfMinute,
	startOfMonth,
	startOfQuarter,
	startOfSecond,
	startOfWeek,
	startOfYear,
	toDate
} from 'date-fns';

/** @throws RangeError */
export function parse(text: string): never {
	throw new RangeError(`charts take days of their own form, not such as ${text}`);
}

export { parse as parseISO };
