import { addDays, type IsoDate } from '#lib/model/calendar.ts';

/**
 * How far the page has fallen behind: nothing on the server and on a fresh page. Set by `watch.ts` in a
 * browser only, so that no visitor shares it with another.
 */
export const standing = $state({
	/** Hours since it was made. */
	hours: 0,
	/** Midnights since. */
	days: 0,
	/** When it was made, in words, once that is more than a day ago; empty before. */
	oldSince: ''
});

/** The day it is by now. @example countedOn('2027-01-10') // => '2027-01-11', on a page of yesterday */
export function countedOn(today: IsoDate, isInvented = false): IsoDate {
	return isInvented ? today : addDays(today, standing.days);
}

/** Nothing counts as reached on an old page. */
export function statusNow<Status extends string>(status: Status): Status | 'expectedNotDrilled' {
	return status === 'reached' && standing.oldSince !== '' ? 'expectedNotDrilled' : status;
}

/** Why a load stands where it does: on an old page nothing is told of holes that count. */
export function reasonSaid({ status, reason }: { status: string; reason: string }): string {
	return asItStood(status) === ''
		? reason
		: 'Whether its holes still count is not known from this copy: drill, and load it anew.';
}

/** What is said in the place of a status that no longer counts; empty where it does. */
export function asItStood(status: string): string {
	return status === 'reached' && standing.oldSince !== ''
		? `Not known now. As it stood on ${standing.oldSince}: minimum met, drilled`
		: '';
}
