import { joinedHoles } from '#lib/model/joined-holes.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { Waiting } from './waiting.ts';

type Entry = Pick<Waiting, 'id' | 'reading' | 'joins' | 'changes' | 'state'>;

/**
 * What waits as the server would have it: holes of one visit in one reading, changes in the place of what
 * they change. What was refused tells nothing of the ice.
 */
export function waitingReadings(entries: readonly Entry[]): Reading[] {
	const readings = new Map<string, Reading>();
	for (const { id, reading, joins, changes, state } of entries) {
		if (state === 'refused') continue;
		const own = { ...reading, id: changes?.readingId ?? id };
		const first = joins === null ? undefined : readings.get(joins);
		const joined = first && joinedHoles(first, own);
		if (joined) readings.set(joined.id, joined);
		else readings.set(own.id, own);
	}
	return [...readings.values()];
}
