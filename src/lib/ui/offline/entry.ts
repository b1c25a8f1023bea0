import { joinedHoles } from '#lib/model/joined-holes.ts';
import type { FormValues, Issue } from '../forms/form-input.ts';
import { personHere, type Person } from './person.ts';
import { listWaiting, newClientId, type Waiting } from './waiting.ts';

/** What a form makes of its fields, by the rules that the server has too. */
export type Made =
	| Wished
	| { issues: readonly Issue[]; /** As far as it can be read. */ reading: Waiting['reading'] };

export type Wished = Pick<Waiting, 'lake' | 'site' | 'reading' | 'position' | 'changes' | 'form'>;

/** Holes of one visit: a reading that was begun no longer ago than this is joined. Our choice. */
const JOINS_MS = 3_600_000;

/** What is put among that which waits, under an id that stays the same whichever way it is sent. */
export async function entryOf(
	made: Wished,
	typed: FormValues,
	mends: Waiting | null
): Promise<Waiting> {
	const now_ms = Date.now();
	const by = mends?.by ?? (await personHere());
	return {
		...made,
		id: mends?.id ?? newClientId(),
		typed,
		by,
		held: null,
		underWayUntil_ms: 0,
		joins: mends ? mends.joins : await joinsOf({ ...made, by }, now_ms),
		changes: mends?.changes ?? made.changes,
		loggedAt_ms: mends?.loggedAt_ms ?? now_ms,
		state: 'waiting',
		reason: null,
		theirs: null
	};
}

/** The first hole of the same visit and person among those that wait. */
async function joinsOf(
	{ lake, site, reading, changes, form, by }: Wished & { by: Person },
	now_ms: number
): Promise<string | null> {
	// The other form is for whole visits, and for changes.
	if (changes || form !== 'hole') return null;
	const waiting = await listWaiting(lake.id).catch(() => []);
	const first = waiting.find(
		(each) =>
			each.site === site &&
			each.by.id === by.id &&
			each.changes === null &&
			each.joins === null &&
			now_ms - each.loggedAt_ms < JOINS_MS &&
			joinedHoles(each.reading, reading) !== null
	);
	return first?.id ?? null;
}
