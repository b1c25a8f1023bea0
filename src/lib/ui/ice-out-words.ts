import type { IsoDate } from '#lib/model/calendar.ts';
import type { IceOutDates } from '#lib/model/forecast.ts';
import { shortDay } from './format/day.ts';

/**
 * When the ice goes, as a window: eight cases of ten open within it. `to` is the
 * last day that is estimated; without a window hardly any opens by then.
 */
export function iceOutSentence(iceOut: IceOutDates | null, to: IsoDate): string {
	const { p10, p50, p90 } = iceOut ?? NEVER;
	if (p10 === null) return `Ice-out: in nine cases of ten not by ${shortDay(to)}.`;
	const first = `Ice-out: ${middle(p50, to)}`;
	return p90 === null
		? `${first}; in one case of ten by ${shortDay(p10)}, in more than one not by ${shortDay(to)}.`
		: `${first}, and in eight cases of ten between ${shortDay(p10)} and ${shortDay(p90)}.`;
}

const NEVER: IceOutDates = { p10: null, p50: null, p90: null };

function middle(p50: IsoDate | null, to: IsoDate): string {
	return p50 === null
		? `more likely than not later than ${shortDay(to)}`
		: `as likely before ${shortDay(p50)} as after`;
}
