import { Kysely } from 'kysely';
import type { Database } from '../schema.ts';
import { listChanges, versionOf } from '../schema-version.ts';
import type { DatabaseAddress } from './address.ts';
import { RemoteDialect } from './remote-dialect.ts';

/** The version of the schema of a database on a server, which is left as it is. */
export async function versionOnServer(address: DatabaseAddress): Promise<string> {
	const db = new Kysely<Database>({ dialect: new RemoteDialect(address) });
	try {
		return versionOf(await listChanges(db));
	} finally {
		await db.destroy();
	}
}
