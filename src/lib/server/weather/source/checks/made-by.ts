import type { Mapped } from '../read/mapped.ts';

type Times = Pick<Mapped, 'hours' | 'days'>;

/**
 * The hours and days that were over when an answer was made. What comes after that was forecast in it,
 * however long ago it is by now, and is no observation.
 */
export function overBy(
	{ hours, days }: Times,
	dayEnds_s: Mapped['dayEnds_s'],
	madeAt: Date
): Times {
	const made_s = madeAt.getTime() / 1000;
	return {
		hours: hours.filter(({ at_s }) => at_s + 3600 <= made_s),
		days: days.filter(({ on }) => (dayEnds_s.get(on) ?? Infinity) <= made_s)
	};
}
