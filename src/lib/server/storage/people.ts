import type { Kysely, Selectable } from 'kysely';
import type { PersonTable } from './access-schema.ts';
import type { Database } from './schema.ts';

export type PersonRow = Selectable<PersonTable>;

/** By name. */
export async function listPeople(db: Kysely<Database>): Promise<PersonRow[]> {
	return db.selectFrom('person').selectAll().orderBy('name').orderBy('made_at').execute();
}

export async function insertPerson(db: Kysely<Database>, person: PersonRow): Promise<void> {
	await db.insertInto('person').values(person).execute();
}

export async function findPerson(db: Kysely<Database>, id: string): Promise<PersonRow | undefined> {
	return db.selectFrom('person').selectAll().where('id', '=', id).executeTakeFirst();
}

export async function findPersonBySecret(
	db: Kysely<Database>,
	secretHash: string
): Promise<PersonRow | undefined> {
	return db
		.selectFrom('person')
		.selectAll()
		.where('secret_hash', '=', secretHash)
		.executeTakeFirst();
}

/** Gives another link to join by, and signs the person out; `false` when there is no such person. */
export async function renewPerson(
	db: Kysely<Database>,
	id: string,
	link: Pick<PersonRow, 'secret_hash' | 'joins_once'>
): Promise<boolean> {
	return db.transaction().execute(async (tx) => {
		await tx.deleteFrom('session').where('person_id', '=', id).execute();
		const done = await tx.updateTable('person').set(link).where('id', '=', id).executeTakeFirst();
		return done.numUpdatedRows > 0n;
	});
}

/** Uses the link; `false` when somebody else was quicker with one that works once. */
export async function noteJoined(
	db: Kysely<Database>,
	{ id, secret_hash, joins_once }: PersonRow,
	at: string
): Promise<boolean> {
	const done = await db
		.updateTable('person')
		.set({ joined_at: at, ...(joins_once === 1 ? { secret_hash: null } : {}) })
		.where('id', '=', id)
		.where('secret_hash', 'is', secret_hash)
		.executeTakeFirst();
	return done.numUpdatedRows > 0n;
}

/** Their sessions and tokens go as well. */
export async function deletePerson(db: Kysely<Database>, id: string): Promise<void> {
	await db.deleteFrom('person').where('id', '=', id).execute();
}
