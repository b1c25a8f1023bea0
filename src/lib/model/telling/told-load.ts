import { daysBetween, type IsoDate } from '../calendar.ts';
import type { LoadStatus } from '../forecast.ts';
import type { LoadFacts } from './facts.ts';
import { hasMoved } from './moved.ts';

/** A better status is told once it has stood on this many days. Our choice. */
const STANDS_d = 2;
/** A day that is expected no more is told as lost after so many days. Our choice. */
const LOST_AFTER_d = 3;
/** The last day of a load is told from so many days before it. Our choice: a frozen-in shelter takes days. */
const END_AHEAD_d = 21;

/** What was told of a load. */
export interface ToldLoad {
	status: LoadStatus;
	/** A better status that has not stood long enough. */
	waiting: { status: LoadStatus; since: IsoDate } | null;
	expectedFrom: IsoDate | null;
	/** Since when no day has been expected, though one was told. */
	lostOn: IsoDate | null;
	until: IsoDate | null;
}

export type LoadNews =
	| { kind: 'statusChanged'; load: LoadFacts; before: LoadStatus }
	| { kind: 'thresholdExpected'; load: LoadFacts; before: IsoDate | null }
	| { kind: 'thresholdLost'; load: LoadFacts; before: IsoDate }
	| { kind: 'endExpected'; load: LoadFacts; until: IsoDate; before: IsoDate | null };

/** How cautious a status is, the most cautious last. */
const CAUTION: Record<LoadStatus, number> = {
	reached: 0,
	expectedNotDrilled: 1,
	notYet: 2,
	askAnEngineer: 3,
	withheld: 4
};

/**
 * What is told of a load, and what then counts as told.
 *
 * A more cautious status is told at once, a better one when it has stood on two days. The day that it is
 * expected from is told while it lies ahead: when it is first known, when it has moved
 * ({@link hasMoved}), and when for three days none has been expected any more. The last day is told
 * from three weeks before it, and when it has moved.
 */
export function loadNews(
	told: ToldLoad | null,
	load: LoadFacts,
	today: IsoDate
): { told: ToldLoad; news: LoadNews[] } {
	const before = told ?? noted(load);
	const news: LoadNews[] = [];
	const next: ToldLoad = {
		...statusOf(before, load, today, news),
		...expectedOf(before, load, today, news),
		until: untilOf(before, load, today, news)
	};
	return { told: next, news };
}

/** A load that nothing was told of: its status stands without a word. */
function noted({ status }: LoadFacts): ToldLoad {
	return { status, waiting: null, expectedFrom: null, lostOn: null, until: null };
}

function statusOf(
	{ status: before, waiting }: ToldLoad,
	load: LoadFacts,
	today: IsoDate,
	news: LoadNews[]
): Pick<ToldLoad, 'status' | 'waiting'> {
	const { status } = load;
	if (status === before) return { status, waiting: null };
	const isWorse = CAUTION[status] > CAUTION[before];
	const since = waiting?.status === status ? waiting.since : today;
	if (!isWorse && daysBetween(since, today) < STANDS_d - 1)
		return { status: before, waiting: { status, since } };
	news.push({ kind: 'statusChanged', load, before });
	return { status, waiting: null };
}

function expectedOf(
	before: ToldLoad,
	load: LoadFacts,
	today: IsoDate,
	news: LoadNews[]
): Pick<ToldLoad, 'expectedFrom' | 'lostOn'> {
	const { expectedFrom } = load;
	const wasTold = before.expectedFrom;
	if (expectedFrom === null) {
		if (wasTold === null) return { expectedFrom: null, lostOn: null };
		const lostOn = before.lostOn ?? today;
		if (daysBetween(lostOn, today) < LOST_AFTER_d) return { expectedFrom: wasTold, lostOn };
		news.push({ kind: 'thresholdLost', load, before: wasTold });
		return { expectedFrom: null, lostOn: null };
	}
	// A day that has come is no forecast any more: the status tells the rest.
	if (expectedFrom <= today) return { expectedFrom, lostOn: null };
	if (wasTold !== null && !hasMoved(wasTold, expectedFrom, today))
		return { expectedFrom: wasTold, lostOn: null };
	news.push({ kind: 'thresholdExpected', load, before: wasTold });
	return { expectedFrom, lostOn: null };
}

function untilOf(
	{ until: wasTold }: ToldLoad,
	load: LoadFacts,
	today: IsoDate,
	news: LoadNews[]
): IsoDate | null {
	// The cautious end where it is known.
	const until = load.offBy ?? load.until;
	const isAhead =
		until !== null &&
		until >= today &&
		daysBetween(today, until) <= END_AHEAD_d &&
		!isComing(load, today);
	if (!isAhead) return until === null ? null : wasTold;
	// A day that is due stays today for as long as it is due.
	if (wasTold !== null && (until <= today || !hasMoved(wasTold, until, today))) return wasTold;
	news.push({ kind: 'endExpected', load, until, before: wasTold });
	return until;
}

/** Nobody has it out there yet. */
function isComing({ expectedFrom }: LoadFacts, today: IsoDate): boolean {
	return expectedFrom === null || expectedFrom > today;
}
