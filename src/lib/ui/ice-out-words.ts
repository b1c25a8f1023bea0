import type { IsoDate } from '#lib/model/calendar.ts';
import type { IceOutDates } from '#lib/model/forecast.ts';
import { shortDay } from './format/day.ts';

/**
 * When the ice goes, as a window: eight in ten of the possible winters open within it. `to` is the
 * last day that is estimated; without a window hardly any opens by then.
 */
export function iceOutSentence(iceOut: IceOutDates | null, to: IsoDate): string {
	const { p10, p50, p90 } = iceOut ?? NEVER;
	if (p10 === null) return `Ice-out: in nine winters in ten not by ${shortDay(to)}.`;
	const first = `Ice-out: ${middle(p50, to)}`;
	return p90 === null
		? `${first}; one in ten has it by ${shortDay(p10)}, more than one in ten not by ${shortDay(to)}.`
		: `${first}; eight in ten have it between ${shortDay(p10)} and ${shortDay(p90)}.`;
}

const NEVER: IceOutDates = { p10: null, p50: null, p90: null };

function middle(p50: IsoDate | null, to: IsoDate): string {
	return p50 === null
		? `more likely than not later than ${shortDay(to)}`
		: `as likely before ${shortDay(p50)} as after`;
}
