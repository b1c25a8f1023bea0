import type { IsoDate } from '#lib/model/calendar.ts';
import type { LakeView } from './lake-view.ts';

/**
 * Ice-out as far as a view may know it: up to the day of asking, and a view of the present up to today,
 * though its weather and so its estimate end before.
 */
export function iceOutByNow({
	record: { iceOutOn },
	asOf,
	today,
	isPresent
}: Pick<LakeView, 'record' | 'asOf' | 'today' | 'isPresent'>): IsoDate | null {
	const now = isPresent && today > asOf ? today : asOf;
	return iceOutOn !== null && iceOutOn <= now ? iceOutOn : null;
}
