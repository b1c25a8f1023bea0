/** The tables of who may come in, as `access-migration.ts` leaves them. Secrets are digests. */
export interface AccessTables {
	passphrase: { one: 1; hash: string; set_at: InstantText };
	person: PersonTable;
	guest_link: GuestLinkTable;
	session: SessionTable;
	api_token: ApiTokenTable;
	known_device: { secret_hash: string; made_at: InstantText };
}

/** An instant as ISO text in UTC. */
type InstantText = string;

export type Role = 'owner' | 'helper' | 'guest';

export interface PersonTable {
	id: string;
	name: string;
	/** Of the link that the person joins by; `null` once it is used up or revoked. */
	secret_hash: string | null;
	joins_once: 0 | 1;
	made_at: InstantText;
	joined_at: InstantText | null;
}

export interface GuestLinkTable {
	id: string;
	lake_id: string;
	name: string;
	secret_hash: string;
	/** Whether exact places may be seen by it. */
	sees_places: 0 | 1;
	made_at: InstantText;
	opened_at: InstantText | null;
}

export interface SessionTable {
	secret_hash: string;
	role: Role;
	person_id: string | null;
	guest_link_id: string | null;
	made_at: InstantText;
	until_at: InstantText;
}

export interface ApiTokenTable {
	id: string;
	name: string;
	secret_hash: string;
	/** `null`: the owner's. */
	person_id: string | null;
	made_at: InstantText;
	used_on: string | null;
}
