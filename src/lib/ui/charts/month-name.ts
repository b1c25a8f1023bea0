import type { IsoDate } from '#lib/model/calendar.ts';
import { monthShort } from '../format/day.ts';
import { midnightOf } from './midnight.ts';

const MS_PER_DAY = 86_400_000;
/** A month at the end of a picture that is too short to hold its name. */
export const SHORTEST_MONTH_d = 14;

/** The month that begins then; empty where hardly any of it is in a picture that ends on `to`. */
export function monthName(at_ms: number, to: IsoDate): string {
	const left_d = (midnightOf(to) - at_ms) / MS_PER_DAY;
	return left_d < SHORTEST_MONTH_d ? '' : monthShort(new Date(at_ms).getMonth() + 1);
}
