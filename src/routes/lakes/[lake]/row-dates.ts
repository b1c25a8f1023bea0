import { shortDay } from '#lib/ui/format/day.ts';
import type { PageLoad } from './lake-page.ts';

/** The days that matter for a load, in a few words; `null` where none is estimated. */
export function rowDates({
	expectedFrom,
	likelyFrom,
	until
}: Pick<PageLoad, 'expectedFrom' | 'likelyFrom' | 'until'>): string | null {
	const parts = [
		...(expectedFrom ? [`expected from ${shortDay(expectedFrom)}`] : []),
		...(likelyFrom ? [`likely from ${shortDay(likelyFrom)}`] : []),
		...(until ? [`until ${shortDay(until)}`] : [])
	];
	return parts.length === 0 ? null : parts.join(', ');
}
