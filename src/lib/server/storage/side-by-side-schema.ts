import type { Flag } from './schema.ts';

/** The tables by which processes on one database know of each other. */
export interface SideBySideTables {
	/** When each lake was last written to, by a number that counts up. Written by triggers only. */
	lake_change: { at: number; lake_id: string };
	lease: LeaseTable;
	refresh_wish: RefreshWishTable;
}

export interface LeaseTable {
	name: string;
	/** A text that only one process has. */
	holder: string;
	/** By the clock of the database, epoch seconds. */
	until_s: number;
}

export interface RefreshWishTable {
	lake_source_id: number;
	wish: 'new' | 'earlierWinters';
	wished_at: string;
	/** How it goes, as JSON. */
	progress: string;
	is_over: Flag;
}
