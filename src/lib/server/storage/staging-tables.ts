import { sql, type Kysely } from 'kysely';
import type { Database } from './schema.ts';

const STAGED = [
	['staged_day', 'weather_day', 'basis, day'],
	['staged_hour', 'weather_hour', 'at_s']
] as const;

/** No part of what is stored. */
export const STAGED_TABLES: readonly string[] = STAGED.map(([staged]) => staged);

/** Tables of the same columns that live in this connection's memory: a crash leaves nothing of them. */
export async function createTempStaging(db: Kysely<Database>): Promise<void> {
	for (const [staged, table, key] of STAGED) {
		await sql`CREATE TEMP TABLE ${sql.table(staged)} AS ${like(table)}`.execute(db);
		await sql`ALTER TABLE ${sql.table(staged)} DROP COLUMN lake_id`.execute(db);
		await index(db, `temp.${staged}_key`, staged, key);
	}
}

/** How long the rest of an import that was cut short is kept: longer than any takes. */
const STALE_MS = 86_400_000;

/** The same on a server, which gives nobody a memory of their own. */
export async function createSharedStaging(db: Kysely<Database>, isAnew: boolean): Promise<void> {
	await db.transaction().execute(async (tx) => {
		for (const [staged, table, key] of STAGED) {
			if (isAnew) await sql`DROP TABLE IF EXISTS ${sql.table(staged)}`.execute(tx);
			else if (await isThere(tx, staged)) continue;
			await sql`CREATE TABLE ${sql.table(staged)} AS ${like(table)}`.execute(tx);
			await sql`ALTER TABLE ${sql.table(staged)} DROP COLUMN lake_id`.execute(tx);
			await index(tx, `${staged}_key`, staged, key);
		}
	});
	const before = stagedAt(new Date(Date.now() - STALE_MS));
	for (const [staged] of STAGED) {
		await db.deleteFrom(staged).where('import_id', '<', before).execute();
	}
}

/** How the id of an import begins, so that it tells its age. */
export function stagedAt(at: Date): string {
	return `import-${at.getTime()}`;
}

function like(table: string) {
	return sql`SELECT lake_id AS import_id, * FROM ${sql.table(table)} WHERE 0`;
}

async function isThere(db: Kysely<Database>, table: string): Promise<boolean> {
	const { rows } = await sql`SELECT 1 FROM sqlite_master WHERE name = ${table}`.execute(db);
	return rows.length > 0;
}

async function index(db: Kysely<Database>, name: string, table: string, key: string) {
	const columns = `${table} (import_id, ${key})`;
	await sql.raw(`CREATE UNIQUE INDEX ${name} ON ${columns}`).execute(db);
}
