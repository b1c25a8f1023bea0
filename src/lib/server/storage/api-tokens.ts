import type { Kysely, Selectable } from 'kysely';
import type { ApiTokenTable } from './access-schema.ts';
import type { Database } from './schema.ts';

export type ApiTokenRow = Selectable<ApiTokenTable>;

export async function insertToken(db: Kysely<Database>, token: ApiTokenRow): Promise<void> {
	await db.insertInto('api_token').values(token).execute();
}

export interface TokenHolder {
	id: string;
	used_on: string | null;
	person: { id: string; name: string } | null;
}

export async function findToken(
	db: Kysely<Database>,
	secretHash: string
): Promise<TokenHolder | null> {
	const row = await db
		.selectFrom('api_token')
		.leftJoin('person', 'person.id', 'api_token.person_id')
		.select(['api_token.id', 'api_token.used_on', 'person.id as personId', 'person.name'])
		.where('api_token.secret_hash', '=', secretHash)
		.executeTakeFirst();
	if (!row) return null;
	const { id, used_on, personId, name } = row;
	return {
		id,
		used_on,
		person: personId !== null && name !== null ? { id: personId, name } : null
	};
}

export async function noteTokenUsed(db: Kysely<Database>, id: string, on: string): Promise<void> {
	await db.updateTable('api_token').set({ used_on: on }).where('id', '=', id).execute();
}

/** Of one person, or of the owner with `null`; the oldest first. */
export async function listTokens(
	db: Kysely<Database>,
	personId: string | null
): Promise<ApiTokenRow[]> {
	return db
		.selectFrom('api_token')
		.selectAll()
		.where('person_id', 'is', personId)
		.orderBy('made_at')
		.execute();
}

/** Only one of that person's own. */
export async function deleteToken(
	db: Kysely<Database>,
	id: string,
	personId: string | null
): Promise<void> {
	await db
		.deleteFrom('api_token')
		.where('id', '=', id)
		.where('person_id', 'is', personId)
		.execute();
}
