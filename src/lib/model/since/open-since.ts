import type { IsoDate } from '../calendar.ts';
import { recordedDays } from '../recorded-days.ts';
import type { SiteEstimate } from '../site-estimate.ts';
import type { Since } from './since.ts';

/** The first day after that of asking on which the site is known to have opened; `null` without one. */
export function openedSince({
	events,
	iceOutOn
}: Pick<Since, 'events' | 'iceOutOn'>): IsoDate | null {
	const reopened = events.filter(({ kind }) => kind === 'reopened').map(({ on }) => on);
	return [...reopened, ...(iceOutOn === null ? [] : [iceOutOn])].toSorted()[0] ?? null;
}

/**
 * The estimate with open water from the day on which the site has opened since. What may have frozen
 * again is told when the weather of that day is in.
 */
export function openSince(estimate: SiteEstimate, since: Since): SiteEstimate {
	const openedOn = openedSince(since);
	if (openedOn === null) return estimate;
	return { ...estimate, days: recordedDays([...estimate.days.values()], openedOn) };
}
