import { sql, type Kysely } from 'kysely';
import type { Database } from './schema.ts';

/** Which sites of a lake are told of; before that was asked, only its main one was. */
export async function tellingSites(db: Kysely<Database>): Promise<void> {
	await sql`ALTER TABLE telling ADD COLUMN sites TEXT CHECK (json_valid(sites))`.execute(db);
}
