import type { Generated } from 'kysely';

/** Tables about readings that came after the first winter. */
export interface ReadingTables {
	reading_version: ReadingVersionTable;
	sent_reading: SentReadingTable;
}

export interface ReadingVersionTable {
	id: Generated<number>;
	reading_id: string;
	/** `replaced`: the version it was. Else the version that whoever wrote it had before them. */
	version: number;
	/** `aside`: written over an older version, nobody has chosen yet. `declined`: the other was chosen. */
	kind: 'replaced' | 'aside' | 'declined';
	/** The reading as JSON. */
	content: string;
	at: string;
}

export interface SentReadingTable {
	/** Made by whoever sent it. */
	client_id: string;
	lake_id: string;
	reading_id: string;
	/** What was sent, to tell a repetition from something else under the same id. */
	content: string;
}
