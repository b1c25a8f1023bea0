import {
	SqliteAdapter,
	SqliteDialect,
	SqliteDriver,
	type DatabaseConnection,
	type SqliteDatabase
} from 'kysely';
import type SqliteFile from 'libsql';
import { tellWriter } from './writer.ts';

/**
 * Kysely's dialect of SQLite, with two things put right that matter when work is cut short, and with
 * its connection told who writes.
 */
export function dialectOf(file: SqliteFile.Database): SqliteDialect {
	// The driver has the better-sqlite3 interface; its types say `any` where Kysely says `unknown`.
	return new WholeDialect({ database: file as unknown as SqliteDatabase });
}

class WholeDialect extends SqliteDialect {
	readonly #config: { database: SqliteDatabase };

	constructor(config: { database: SqliteDatabase }) {
		super(config);
		this.#config = config;
	}

	override createAdapter(): SqliteAdapter {
		return new WholeAdapter();
	}

	override createDriver(): SqliteDriver {
		return new WholeDriver(this.#config);
	}
}

/** Kysely takes it that SQLite cannot roll a change of the schema back. It can. */
class WholeAdapter extends SqliteAdapter {
	override get supportsTransactionalDdl(): boolean {
		return true;
	}
}

/**
 * On a full disk SQLite rolls back by itself. Kysely's rollback after it would then fail, and hide
 * what had gone wrong.
 */
class WholeDriver extends SqliteDriver {
	override async acquireConnection(): Promise<DatabaseConnection> {
		const connection = await super.acquireConnection();
		try {
			await tellWriter(connection);
		} catch (cause) {
			await this.releaseConnection();
			throw cause;
		}
		return connection;
	}

	override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
		try {
			await super.rollbackTransaction(connection);
		} catch (cause) {
			if (!String(cause).includes('no transaction is active')) throw cause;
		}
	}
}
