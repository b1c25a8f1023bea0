import SqliteFile from 'libsql';
import { sql, type Kysely } from 'kysely';
import { z } from 'zod';
import { StorageRefusal } from './refusal.ts';
import { migrations } from './migrations.ts';
import type { Database } from './schema.ts';

const names = z.array(z.object({ name: z.string() }));

/** The changes of the schema that a file has been through, by name; none for an empty file. */
export function changesOf(file: SqliteFile.Database): string[] {
	const tables: unknown = file
		.prepare(`SELECT name FROM sqlite_master WHERE type = 'table' AND name = 'kysely_migration'`)
		.all();
	if (names.parse(tables).length === 0) return [];
	const rows: unknown = file.prepare('SELECT name FROM kysely_migration ORDER BY name').all();
	return names.parse(rows).map(({ name }) => name);
}

/** Changes that the file is still to go through. */
export function changesToCome(done: readonly string[]): string[] {
	return Object.keys(migrations).filter((name) => !done.includes(name));
}

/** Of what is no database of ours, or an empty one. */
export const NO_VERSION = '0000';

/** How a file's schema is named, by its newest change. @example versionOf(['0004-x']) // => '0004' */
export function versionOf(done: readonly string[]): string {
	return done.toSorted().at(-1)?.slice(0, 4) ?? NO_VERSION;
}

/** @throws StorageRefusal when a newer version of the app has written the file. */
export function refuseNewer(done: readonly string[], path: string): void {
	const unknown = done.filter((name) => !(name in migrations));
	if (unknown.length === 0) return;
	throw new StorageRefusal(
		`Database ${path} was written by a newer version of Frostledger, whose change ` +
			`“${unknown[0]}” this version does not know. Start the newer version, or restore a backup ` +
			'that this one has made. The file has been left as it is'
	);
}

/** The version of the file at a path. */
export function schemaVersionOf(path: string): string {
	const file = new SqliteFile(path);
	try {
		return versionOf(changesOf(file));
	} finally {
		file.close();
	}
}

/** Changes that an open database is still to go through: none, unless something went wrong. */
export async function pendingChanges(db: Kysely<Database>): Promise<string[]> {
	return changesToCome(await listChanges(db));
}

/** The changes that an open database has been through, by name; none for an empty one. */
export async function listChanges(db: Kysely<Database>): Promise<string[]> {
	const { rows: tables } = await sql`SELECT 1 FROM sqlite_master
		WHERE type = 'table' AND name = 'kysely_migration'`.execute(db);
	if (tables.length === 0) return [];
	const { rows } = await sql<{ name: string }>`
		SELECT name FROM kysely_migration ORDER BY name`.execute(db);
	return rows.map(({ name }) => name);
}
