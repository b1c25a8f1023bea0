import { addDays } from '#lib/model/calendar.ts';
import { startOfDay_s } from '../lake-days.ts';
import type { Mapped } from '../read/mapped.ts';

type Times = Pick<Mapped, 'hours' | 'days'>;

/**
 * The hours and days that were over when an answer was made. What comes after that was forecast in it,
 * however long ago it is by now, and is no observation.
 */
export function overBy({ hours, days }: Times, madeAt: Date, timeZone: string): Times {
	const made_s = madeAt.getTime() / 1000;
	return {
		hours: hours.filter(({ at_s }) => at_s + 3600 <= made_s),
		days: days.filter(({ on }) => startOfDay_s(addDays(on, 1), timeZone) <= made_s)
	};
}
