import {
	SqliteAdapter,
	SqliteDialect,
	SqliteDriver,
	type DatabaseConnection,
	type SqliteDatabase
} from 'kysely';
import type SqliteFile from 'libsql';
import { PatientConnection } from './patient-connection.ts';
import { tellWriter } from './writer.ts';

/**
 * Kysely's dialect of SQLite, put right where work is cut short or others write to the same file, and
 * with its connection told who writes.
 */
export function dialectOf(file: SqliteFile.Database): SqliteDialect {
	return new WholeDialect(file);
}

class WholeDialect extends SqliteDialect {
	readonly #file: SqliteFile.Database;

	constructor(file: SqliteFile.Database) {
		super(configOf(file));
		this.#file = file;
	}

	override createAdapter(): SqliteAdapter {
		return new WholeAdapter();
	}

	override createDriver(): SqliteDriver {
		return new WholeDriver(this.#file);
	}
}

/** Kysely takes it that SQLite cannot roll a change of the schema back. It can. */
class WholeAdapter extends SqliteAdapter {
	override get supportsTransactionalDdl(): boolean {
		return true;
	}
}

class WholeDriver extends SqliteDriver {
	readonly #file: SqliteFile.Database;

	constructor(file: SqliteFile.Database) {
		super(configOf(file));
		this.#file = file;
	}

	override async acquireConnection(): Promise<PatientConnection> {
		const connection = await super.acquireConnection();
		try {
			// In the connection's own memory: nobody has to be waited for.
			await tellWriter(connection);
		} catch (cause) {
			await this.releaseConnection();
			throw cause;
		}
		return new PatientConnection(connection, this.#file);
	}

	/** With the right to write: asked for later, it is refused when another process wrote meanwhile. */
	override async beginTransaction(connection: PatientConnection): Promise<void> {
		await connection.begin();
	}

	/**
	 * On a full disk SQLite rolls back by itself. Kysely's rollback after it would then fail, and hide
	 * what had gone wrong.
	 */
	override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
		try {
			await super.rollbackTransaction(connection);
		} catch (cause) {
			if (!String(cause).includes('no transaction is active')) throw cause;
		}
	}
}

/** The driver has the better-sqlite3 interface; its types say `any` where Kysely says `unknown`. */
function configOf(file: SqliteFile.Database): { database: SqliteDatabase } {
	return { database: file as unknown as SqliteDatabase };
}
