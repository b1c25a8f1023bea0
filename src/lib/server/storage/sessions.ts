import type { Kysely, Selectable } from 'kysely';
import type { GuestLinkTable, PersonTable, SessionTable } from './access-schema.ts';
import type { Database } from './schema.ts';

export interface Admitted {
	role: SessionTable['role'];
	person: Pick<Selectable<PersonTable>, 'id' | 'name'> | null;
	guest: Pick<Selectable<GuestLinkTable>, 'lake_id' | 'sees_places'> | null;
}

/** Whom a session lets in at an instant; `null` where there is none, or none any more. */
export async function findSession(
	db: Kysely<Database>,
	secretHash: string,
	at: string
): Promise<Admitted | null> {
	const row = await db
		.selectFrom('session')
		.leftJoin('person', 'person.id', 'session.person_id')
		.leftJoin('guest_link', 'guest_link.id', 'session.guest_link_id')
		.select(['session.role', 'person.id', 'person.name'])
		.select(['guest_link.lake_id', 'guest_link.sees_places'])
		.where('session.secret_hash', '=', secretHash)
		.where('session.until_at', '>', at)
		.executeTakeFirst();
	if (!row) return null;
	const { role, id, name, lake_id, sees_places } = row;
	return {
		role,
		person: id !== null && name !== null ? { id, name } : null,
		guest: lake_id !== null && sees_places !== null ? { lake_id, sees_places } : null
	};
}

/** Stores it, and clears away those that are over. */
export async function insertSession(
	db: Kysely<Database>,
	session: Selectable<SessionTable>
): Promise<void> {
	await db.transaction().execute(async (tx) => {
		await tx.deleteFrom('session').where('until_at', '<=', session.made_at).execute();
		await tx.insertInto('session').values(session).execute();
	});
}

export async function deleteSession(db: Kysely<Database>, secretHash: string): Promise<void> {
	await db.deleteFrom('session').where('secret_hash', '=', secretHash).execute();
}

/** All of a person, or of the owner with `null`. */
export async function deleteSessionsOf(
	db: Kysely<Database>,
	personId: string | null
): Promise<void> {
	const sessions = db.deleteFrom('session');
	await (
		personId === null
			? sessions.where('role', '=', 'owner')
			: sessions.where('person_id', '=', personId)
	).execute();
}

/** Everybody's, and which browsers are known. */
export async function deleteAllSessions(db: Kysely<Database>): Promise<void> {
	await db.transaction().execute(async (tx) => {
		await tx.deleteFrom('session').execute();
		await tx.deleteFrom('known_device').execute();
	});
}
