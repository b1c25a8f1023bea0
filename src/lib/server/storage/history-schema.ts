import type { Generated } from 'kysely';

/** The table of changes, as `history-migration.ts` leaves it. */
export interface HistoryTable {
	id: Generated<number>;
	/** What one person did at one time has one number, which grows. */
	unit: number;
	/** `null`: of no one lake, as a source is. */
	lake_id: string | null;
	at: string;
	who: string;
	/** A table, or `weather` for a file that was taken in. */
	what: string;
	/** JSON of what the row is known by. */
	key: string;
	/** JSON of the row, `null` where there was none. */
	before: string | null;
	after: string | null;
}

/** Who writes in the transaction that is under way, as `writer-migration.ts` leaves it. */
export interface WriterTable {
	only_row: number;
	unit: number;
	who: string;
	at: string;
}
