import { shortDay } from '#lib/ui/format/day.ts';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { PageLoad } from './lake-page.ts';

/** The days that matter for a load, in a few words; `null` where none is estimated. */
export function rowDates(
	{
		expectedFrom,
		likelyFrom,
		until,
		status
	}: Pick<PageLoad, 'expectedFrom' | 'likelyFrom' | 'until' | 'status'>,
	asOf: IsoDate
): string | null {
	if (expectedFrom !== null && until !== null && until < asOf)
		return `was expected from ${shortDay(expectedFrom)} to ${shortDay(until)}`;
	const hasBegun = expectedFrom !== null && expectedFrom <= asOf;
	// Beside stay off a day until which it is thick enough would sound like leave.
	if (status === 'withheld' && hasBegun) return null;
	// Beside a status that goes by the lower bound, expected would say the opposite of it.
	const isOnlyEven = status === 'notYet' && hasBegun;
	const expected = isOnlyEven ? 'as likely as not' : 'expected';
	const from = (on: IsoDate) => `${on <= asOf ? 'since' : 'from'} ${shortDay(on)}`;
	const parts = [
		...(expectedFrom ? [`${expected} ${from(expectedFrom)}`] : []),
		...(likelyFrom ? [`likely ${from(likelyFrom)}`] : []),
		...(until ? [`until ${shortDay(until)}`] : [])
	];
	return parts.length === 0 ? null : parts.join(', ');
}
