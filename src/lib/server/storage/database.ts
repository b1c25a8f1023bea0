import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import SqliteFile from 'libsql';
import { Kysely } from 'kysely';
import { backUpBefore } from './backup/before-change.ts';
import { watchLakeChanges } from './lake-changes.ts';
import { migrate, storageRefusal } from './migrate.ts';
import { dropOwnTriggers } from './own-triggers.ts';
import { BUSY_MS } from './patient-connection.ts';
import { changesOf, changesToCome, refuseNewer } from './schema-version.ts';
import type { Database } from './schema.ts';
import { dialectOf } from './sqlite-dialect.ts';
import { createTempStaging } from './staging-tables.ts';
import { storageTrouble } from './trouble.ts';
import { watchHistory } from './watch-history.ts';

export const IN_MEMORY = ':memory:';

/**
 * Opens the database file, makes it and its folder when absent, and brings its schema up to date,
 * after a backup of its own where there was something before.
 * @throws StorageRefusal naming the file when it cannot be opened, a newer version of the app has
 * written it, or its schema cannot be brought up to date.
 */
export async function openDatabase(path: string): Promise<Kysely<Database>> {
	const file = await openFile(path);
	const db = new Kysely<Database>({ dialect: dialectOf(file) });
	try {
		const done = changesOf(file);
		refuseNewer(done, path);
		if (done.length > 0 && changesToCome(done).length > 0) {
			await backUpBefore(path, dirname(path), done);
			await dropOwnTriggers(db);
		}
		await migrate(db, path);
		await createTempStaging(db);
		await watchLakeChanges(db);
		await watchHistory(db);
		return db;
	} catch (cause) {
		await db.destroy();
		file.close();
		throw cause;
	}
}

const TRIES = 50;
const BETWEEN_TRIES_MS = 100;

/** Of two that open a new file at once, one is refused its way of writing, and waits for the other. */
async function openFile(path: string, tries = TRIES): Promise<SqliteFile.Database> {
	try {
		return openOnce(path);
	} catch (cause) {
		if (tries <= 1 || storageTrouble(cause) !== 'locked')
			throw storageRefusal(`Database ${path} could not be opened`, cause);
	}
	await wait(BETWEEN_TRIES_MS);
	return openFile(path, tries - 1);
}

function openOnce(path: string): SqliteFile.Database {
	if (path !== IN_MEMORY) mkdirSync(dirname(path), { recursive: true });
	const file = new SqliteFile(path);
	try {
		file.pragma('journal_mode = WAL');
		// What has been answered must outlive a power cut, not only the process.
		file.pragma('synchronous = FULL');
		file.pragma('foreign_keys = ON');
		file.pragma(`busy_timeout = ${BUSY_MS}`);
		file.pragma('temp_store = MEMORY');
		return file;
	} catch (cause) {
		file.close();
		throw cause;
	}
}
