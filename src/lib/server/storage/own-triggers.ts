import { sql, type Kysely } from 'kysely';
import type { Database } from './schema.ts';

/** How the names of triggers begin that are made at the start, and not by a change of the schema. */
export const NOTED = 'noted ';
export const RECORDED = 'history of ';

/** Makes the triggers of a kind that are missing, or were made by another version. */
export function keepTriggers(
	db: Kysely<Database>,
	kind: string,
	wantedIn: (tx: Kysely<Database>) => Promise<Map<string, string>>
): Promise<void> {
	return db.transaction().execute(async (tx) => {
		const wanted = await wantedIn(tx);
		const there = await triggersOf(tx, kind);
		if (there.size === wanted.size && [...wanted].every(([name, it]) => there.get(name) === it))
			return;
		await drop(tx, there.keys());
		for (const statement of wanted.values()) await sql.raw(statement).execute(tx);
	});
}

/** For a change of the schema: triggers keep SQLite from taking away what they name. */
export async function dropOwnTriggers(db: Kysely<Database>): Promise<void> {
	for (const kind of [NOTED, RECORDED]) await drop(db, (await triggersOf(db, kind)).keys());
}

/** Their statements by name, as they were written. */
async function triggersOf(db: Kysely<Database>, kind: string): Promise<Map<string, string>> {
	const { rows } = await sql<{ name: string; sql: string }>`SELECT name, sql FROM sqlite_master
		WHERE type = 'trigger' AND name LIKE ${`${kind}%`}`.execute(db);
	return new Map(rows.map((row) => [row.name, row.sql]));
}

async function drop(db: Kysely<Database>, names: Iterable<string>): Promise<void> {
	for (const name of names) await sql`DROP TRIGGER ${sql.id(name)}`.execute(db);
}
