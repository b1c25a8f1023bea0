import { Migrator, type Kysely } from 'kysely';
import { migrations } from './migrations.ts';
import { StorageRefusal } from './refusal.ts';
import type { Database } from './schema.ts';
import { storageTrouble, troubleSentence } from './trouble.ts';

/** All changes or none: what is cut short leaves the schema that was there. @throws StorageRefusal */
export async function migrate(db: Kysely<Database>, name: string): Promise<void> {
	const provider = { getMigrations: async () => migrations };
	// Changes that were written side by side may reach a file in either order; each stands alone.
	const migrator = new Migrator({ db, provider, allowUnorderedMigrations: true });
	const { error } = await migrator.migrateToLatest();
	if (error) throw storageRefusal(`Schema of ${name} could not be brought up to date`, error);
}

const OF_A_FILE = 'check that FROSTLEDGER_DATA names a folder that can be written to';

/** What failed and why, with what to look at. */
export function storageRefusal(what: string, cause: unknown, hint = OF_A_FILE): StorageRefusal {
	const trouble = storageTrouble(cause);
	const reason = cause instanceof StorageRefusal ? cause.message : null;
	const why = reason ?? (trouble ? `${troubleSentence(trouble)} (${hint})` : hint);
	return new StorageRefusal(`${what}: ${why}`, { cause });
}
