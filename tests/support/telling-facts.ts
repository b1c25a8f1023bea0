import type { LoadFacts, TellingFacts } from '#lib/model/telling/facts.ts';

/** A quiet day of an invented lake, of which nothing is to be told. */
export function tellingFacts(change: Partial<TellingFacts> = {}): TellingFacts {
	return {
		site: null,
		today: '2027-01-05',
		winter: '2026-27',
		asOf: '2027-01-05',
		loads: [],
		spell: null,
		thaw: null,
		flood: null,
		iceOut: null,
		readingDueOn: null,
		lastHoleOn: '2027-01-02',
		stale: null,
		removalOn: null,
		...change
	};
}

export function loadFacts(change: Partial<LoadFacts> = {}): LoadFacts {
	return {
		id: 'car',
		name: 'Car',
		status: 'notYet',
		reason: '30 cm is asked for; the ice counts as 20 cm.',
		expectedFrom: '2027-01-12',
		likelyFrom: '2027-01-20',
		until: '2027-03-18',
		offBy: null,
		...change
	};
}
