import type { Reading } from './reading.ts';

type Drilled = Omit<Reading, 'id'>;

/**
 * The reading with another one's holes put to it, where both tell of the same place and in the same way;
 * `null` where they are two readings. A core that was looked at in one of them counts for both.
 */
export function joinedHoles<First extends Drilled>(first: First, more: Drilled): First | null {
	const isAlike =
		first.on === more.on &&
		first.kind === more.kind &&
		plain(first.place) === plain(more.place) &&
		first.secondHand === more.secondHand &&
		isSame(first.core, more.core) &&
		isSame(first.by, more.by) &&
		more.remark === null;
	// Where ice broke is a fact of its own each time.
	if (!isAlike || first.kind === 'wentThrough') return null;
	return {
		...first,
		core: first.core ?? more.core,
		by: first.by ?? more.by,
		holes: [...first.holes, ...more.holes]
	};
}

function plain(place: string | null): string {
	return (place ?? '').trim().toLowerCase();
}

/** What was not said speaks against nothing. */
function isSame(a: string | null, b: string | null): boolean {
	return a === null || b === null || a === b;
}
