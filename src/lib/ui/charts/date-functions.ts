/**
 * What the chart library's date adapter takes from date-fns, but for reading dates in a written form:
 * our charts give instants, and the reader of forms is a tenth of all that the charts weigh.
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
	parseISO,
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
	throw new RangeError(`charts take instants, not dates in a written form such as ${text}`);
}
