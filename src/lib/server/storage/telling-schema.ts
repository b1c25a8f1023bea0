import type { Generated } from 'kysely';
import type { IsoDate } from '#lib/model/calendar.ts';
import type { UnitChoice } from '#lib/model/shown-length.ts';

/** The tables of what is told, as `telling-migration.ts` leaves them. */
export interface TellingTables {
	telling: TellingTable;
	telling_feed: TellingFeedTable;
	telling_message: TellingMessageTable;
	telling_date: TellingDateTable;
	webhook: WebhookTable;
	webhook_outbox: WebhookOutboxTable;
}

/** An instant as ISO text in UTC. */
type InstantText = string;

export type FeedKind = 'calendar' | 'changes';

export interface TellingTable {
	lake_id: string;
	/** JSON array of ids; `null` while nobody has chosen. */
	loads: string | null;
	/** JSON array of ids; `null` while nobody has chosen: the main one. */
	sites: string | null;
	reading_after_d: number;
	/** Since when anything is told; `null` while all ways are off. */
	since_at: InstantText | null;
	/** JSON of what was told, by site. */
	state: string | null;
	/** When the lake was last looked at, a digest of what was seen, and its own day then. */
	looked_at: InstantText | null;
	looked_of: string | null;
	looked_on: IsoDate | null;
	/** The lake's name when it was last looked at. */
	named: string | null;
	/** When what the feeds show last changed. */
	changed_at: InstantText;
	/** The units of the texts. */
	measure: UnitChoice['measure'];
	mass: UnitChoice['mass'];
}

export interface TellingFeedTable {
	lake_id: string;
	kind: FeedKind;
	/** SHA-256 of the secret in the address, hexadecimal: the secret itself is nowhere. */
	secret_hash: string;
	made_at: InstantText;
	/** Noted once an hour. */
	fetched_at: InstantText | null;
}

export interface TellingMessageTable {
	id: string;
	lake_id: string;
	/** The reading that it tells of, once each. */
	reading_id: string | null;
	kind: string;
	load_id: string | null;
	about_day: IsoDate | null;
	title: string;
	text: string;
	made_at: InstantText;
	changed_at: InstantText;
}

export interface TellingDateTable {
	lake_id: string;
	key: string;
	uid: string;
	from_day: IsoDate;
	to_day: IsoDate;
	title: string;
	text: string;
	/** Counts up with each move of its days. */
	sequence: number;
	changed_at: InstantText;
	/** 0: not expected any more; kept, so that its sequence goes on if it comes back. */
	is_shown: 0 | 1;
}

export interface WebhookTable {
	lake_id: string;
	/** May hold a secret of the receiver's: never shown again whole. */
	address: string;
	/** What bodies are signed with. */
	key: string;
	/** JSON array of the kinds that are sent. */
	kinds: string;
	made_at: InstantText;
	/** In a row. */
	failures: Generated<number>;
	next_at: InstantText | null;
	stopped_at: InstantText | null;
	/** Why the last try failed, in a sentence. */
	trouble: string | null;
	delivered_at: InstantText | null;
}

/** What is still to be sent, in its order. */
export interface WebhookOutboxTable {
	serial: Generated<number>;
	id: string;
	lake_id: string;
	body: string;
	made_at: InstantText;
}
