import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import SqliteFile from 'libsql';
import { Kysely, Migrator, SqliteDialect, sql, type SqliteDatabase } from 'kysely';
import { migrations } from './migrations.ts';
import type { Database } from './schema.ts';

export const IN_MEMORY = ':memory:';

/**
 * Opens the database file, makes it and its folder when absent, and brings its schema up to date.
 * @throws Error naming the file when it cannot be opened or its schema cannot be brought up to date.
 */
export async function openDatabase(path: string): Promise<Kysely<Database>> {
	if (path !== IN_MEMORY) mkdirSync(dirname(path), { recursive: true });
	const file = openFile(path);
	// The driver has the better-sqlite3 interface; its types say `any` where Kysely says `unknown`.
	const database = file as unknown as SqliteDatabase;
	const db = new Kysely<Database>({ dialect: new SqliteDialect({ database }) });
	await migrate(db, path);
	await createStaging(db);
	return db;
}

function openFile(path: string): SqliteFile.Database {
	try {
		const file = new SqliteFile(path);
		file.pragma('journal_mode = WAL');
		// What has been answered must outlive a power cut, not only the process.
		file.pragma('synchronous = FULL');
		file.pragma('foreign_keys = ON');
		file.pragma('busy_timeout = 5000');
		file.pragma('temp_store = MEMORY');
		return file;
	} catch (cause) {
		const hint = 'check that FROSTLEDGER_DATA names a folder that can be written to';
		throw new Error(`Database ${path} could not be opened; ${hint}`, { cause });
	}
}

async function migrate(db: Kysely<Database>, path: string): Promise<void> {
	const provider = { getMigrations: async () => migrations };
	// Changes that were written side by side may reach a file in either order; each stands alone.
	const migrator = new Migrator({ db, provider, allowUnorderedMigrations: true });
	const { error } = await migrator.migrateToLatest();
	if (error) {
		await db.destroy();
		throw new Error(`Schema of ${path} could not be brought up to date`, { cause: error });
	}
}

/** Tables of the same columns that live in this connection's memory: a crash leaves nothing of them. */
async function createStaging(db: Kysely<Database>): Promise<void> {
	for (const [staged, table, key] of [
		['staged_day', 'weather_day', 'basis, day'],
		['staged_hour', 'weather_hour', 'at_s']
	] as const) {
		const like = sql`SELECT lake_id AS import_id, * FROM ${sql.table(table)} WHERE 0`;
		await sql`CREATE TEMP TABLE ${sql.table(staged)} AS ${like}`.execute(db);
		await sql`ALTER TABLE ${sql.table(staged)} DROP COLUMN lake_id`.execute(db);
		const index = sql.raw(
			`CREATE UNIQUE INDEX temp.${staged}_key ON ${staged} (import_id, ${key})`
		);
		await index.execute(db);
	}
}
