import { Kysely, sql } from 'kysely';
import { backUpBefore } from '../backup/before-change.ts';
import { watchLakeChanges } from '../lake-changes.ts';
import { migrate, storageRefusal } from '../migrate.ts';
import { dropOwnTriggers } from '../own-triggers.ts';
import { changesToCome, listChanges, refuseNewer } from '../schema-version.ts';
import type { Database } from '../schema.ts';
import { createSharedStaging } from '../staging-tables.ts';
import { watchHistory } from '../watch-history.ts';
import type { DatabaseAddress } from './address.ts';
import { RemoteDialect } from './remote-dialect.ts';

/**
 * Opens a database on a libSQL server and brings its schema up to date, all or nothing and after a
 * backup into the data folder; without one where there is none.
 * @throws StorageRefusal naming the server when it cannot be reached, a newer version of the app has
 * written the database, or its schema cannot be brought up to date.
 */
export async function openRemoteDatabase(
	address: DatabaseAddress,
	dataFolder: string | null
): Promise<Kysely<Database>> {
	const name = `on ${address.host}`;
	const db = new Kysely<Database>({ dialect: new RemoteDialect(address) });
	try {
		const done = await reached(db, name);
		refuseNewer(done, name);
		const isToChange = changesToCome(done).length > 0;
		if (isToChange && done.length > 0 && dataFolder !== null) {
			await backUpBefore(address, dataFolder, done);
		}
		if (isToChange) await dropOwnTriggers(db);
		await migrate(db, name);
		await createSharedStaging(db, isToChange);
		await watchLakeChanges(db);
		await watchHistory(db);
		return db;
	} catch (cause) {
		await db.destroy();
		throw cause;
	}
}

async function reached(db: Kysely<Database>, name: string): Promise<string[]> {
	try {
		await sql`SELECT 1`.execute(db);
		return await listChanges(db);
	} catch (cause) {
		const hint = 'check FROSTLEDGER_DATABASE and FROSTLEDGER_DATABASE_TOKEN';
		throw storageRefusal(`Database ${name} could not be opened`, cause, hint);
	}
}
