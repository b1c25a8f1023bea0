import type { IsoDate } from '#lib/model/calendar.ts';
import type { EarlyGrowth } from '#lib/model/early/growth.ts';
import { requirement } from '../format/length.ts';
import type { Units } from '../units-setting.ts';
import { weekday } from './growth-words.ts';

/** Whether a test is worth the trip, in one sentence. */
export function testHeadline(
	{ test, snowKnown }: Pick<EarlyGrowth, 'test' | 'snowKnown'>,
	{ now, isWithheld }: { now: IsoDate; isWithheld: boolean },
	units: Units
): string {
	if (isWithheld) return 'Stay off: a warm spell or a bad core is on record.';
	if (!snowKnown || test === null)
		return 'No day for a test can be named: the snow on the ice is not known.';
	const lowest = requirement(test.lowest_m, units);
	if (test.on === null && test.isThawInTheWay)
		return `No trip is worth it yet: where ${lowest} is as likely as not, so is a warm spell.`;
	if (test.on === null)
		return `No trip is worth it yet: on no day told is ${lowest} as likely as not.`;
	return test.on <= now
		? `A test from the shore outward is worth the trip: as likely as not a hole shows ${lowest}.`
		: `A test is worth the trip from ${weekday(test.on)}: before that ${lowest} is less likely than not.`;
}

/** What a hole would have to show. */
export function holeSentence(
	{ lowest_m, asked_m }: NonNullable<EarlyGrowth['test']>,
	units: Units
): string {
	const lowest = requirement(lowest_m, units);
	const asked = requirement(asked_m, units);
	const more =
		asked_m > lowest_m
			? ` The charts chosen for this lake ask ${asked} of one person on foot: nobody goes further than the holes show that.`
			: '';
	return `A hole would have to show ${lowest} of clear ice at the least, without water coming up; white ice counts half. Less, or a chisel that goes through in one blow: back the way you came.${more}`;
}
