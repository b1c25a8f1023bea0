/** How the refreshing of a lake's weather goes, source by source. */
export interface RefreshState {
	lake: string;
	isRunning: boolean;
	sources: SourceProgress[];
}

export interface SourceProgress {
	source: string;
	name: string;
	/** `notAsked`: a limit, or an answer that still holds, stood in the way; `sentences` says which. */
	status: 'idle' | 'waiting' | 'asking' | 'done' | 'failed' | 'notAsked' | 'stopped';
	/** Days of history that have come, of those that are asked for in this run. */
	doneDays: number;
	wantedDays: number;
	/** What was wrong and what to do, or why it was not asked. */
	sentences: string[];
	startedAt: Date | null;
	finishedAt: Date | null;
	/** When it is due by itself. */
	nextAt: Date | null;
}

/** One use of a source that waits for its turn or has had it. */
export interface Job {
	useId: number;
	lakeId: string;
	isOnDemand: boolean;
	wish: Wish;
	progress: Omit<SourceProgress, 'source' | 'name' | 'nextAt'>;
}

/** What is new, or the winters before this one as well. */
export type Wish = 'new' | 'earlierWinters';

export function newJob(
	use: { id: number; lake_id: string },
	isOnDemand: boolean,
	wish: Wish,
	at: Date
): Job {
	const progress = {
		status: 'waiting' as const,
		doneDays: 0,
		wantedDays: 0,
		sentences: [],
		startedAt: at,
		finishedAt: null
	};
	return { useId: use.id, lakeId: use.lake_id, isOnDemand, wish, progress };
}
