import { SqliteAdapter, SqliteDialect, SqliteDriver, type SqliteDatabase } from 'kysely';
import type SqliteFile from 'libsql';
import { PatientConnection } from './patient-connection.ts';

/**
 * Kysely's dialect of SQLite, put right where work is cut short or others write to the same file.
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
		return new PatientConnection(await super.acquireConnection(), this.#file);
	}

	/** With the right to write: asked for later, it is refused when another process wrote meanwhile. */
	override async beginTransaction(connection: PatientConnection): Promise<void> {
		await connection.begin();
	}

	override async commitTransaction(connection: PatientConnection): Promise<void> {
		connection.commit();
	}

	/** Kysely's own would fail where SQLite has rolled back by itself, and hide what had gone wrong. */
	override async rollbackTransaction(connection: PatientConnection): Promise<void> {
		connection.rollback();
	}
}

/** The driver has the better-sqlite3 interface; its types say `any` where Kysely says `unknown`. */
function configOf(file: SqliteFile.Database): { database: SqliteDatabase } {
	return { database: file as unknown as SqliteDatabase };
}
