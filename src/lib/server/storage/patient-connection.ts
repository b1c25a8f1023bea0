import { setTimeout as wait } from 'node:timers/promises';
import type { CompiledQuery, DatabaseConnection, QueryResult } from 'kysely';
import type SqliteFile from 'libsql';
import { storageTrouble } from './trouble.ts';
import { FORGET_WRITER, NOTE_WRITER, writerValues } from './writer.ts';

/** A transaction elsewhere takes less; what lasts longer is told as a fault. */
const LONGEST_MS = 10_000;
const FIRST_PAUSE_MS = 2;
const LONGEST_PAUSE_MS = 50;

/** How long SQLite itself waits, and holds up the whole process: where one that starts repairs the file. */
export const BUSY_MS = 5_000;

/** Statements that change nothing. */
export const READS = /^\s*(select|pragma|explain|vacuum)\b/i;

/**
 * A connection that waits while another process writes to the file, and answers other requests
 * meanwhile. It asks for the right to write before anything else, for a single statement as well: the
 * driver lets go of a statement that was refused only when memory is cleared, and until then nothing
 * could be committed. Whoever writes is noted for as long.
 */
export class PatientConnection implements DatabaseConnection {
	readonly #connection: DatabaseConnection;
	readonly #file: SqliteFile.Database;
	#isWriterNoted = false;

	constructor(connection: DatabaseConnection, file: SqliteFile.Database) {
		this.#connection = connection;
		this.#file = file;
	}

	async begin(): Promise<void> {
		const begun_ms = performance.now();
		for (let pause_ms = FIRST_PAUSE_MS; ; pause_ms = Math.min(2 * pause_ms, LONGEST_PAUSE_MS)) {
			try {
				this.#tryToBegin();
				return this.#noteWriter();
			} catch (cause) {
				const isBusy = storageTrouble(cause) === 'locked';
				if (!isBusy || performance.now() - begun_ms > LONGEST_MS) throw cause;
			}
			await wait(pause_ms);
		}
	}

	#tryToBegin(): void {
		this.#file.pragma('busy_timeout = 0');
		try {
			this.#file.exec('BEGIN IMMEDIATE');
		} finally {
			this.#file.pragma(`busy_timeout = ${BUSY_MS}`);
		}
	}

	#noteWriter(): void {
		const values = writerValues();
		this.#isWriterNoted = values !== null;
		if (values === null) return;
		try {
			this.#file.prepare(NOTE_WRITER).run(...values);
		} catch (cause) {
			this.rollback();
			throw cause;
		}
	}

	commit(): void {
		if (this.#isWriterNoted) this.#file.exec(FORGET_WRITER);
		this.#file.exec('COMMIT');
	}

	/** On a full disk SQLite has rolled back by itself. */
	rollback(): void {
		if (this.#file.inTransaction) this.#file.exec('ROLLBACK');
	}

	async executeQuery<Row>(query: CompiledQuery): Promise<QueryResult<Row>> {
		if (this.#file.inTransaction || READS.test(query.sql)) {
			return this.#connection.executeQuery<Row>(query);
		}
		await this.begin();
		try {
			const result = await this.#connection.executeQuery<Row>(query);
			this.commit();
			return result;
		} catch (cause) {
			this.rollback();
			throw cause;
		}
	}

	streamQuery<Row>(
		query: CompiledQuery,
		chunkSize: number
	): AsyncIterableIterator<QueryResult<Row>> {
		return this.#connection.streamQuery<Row>(query, chunkSize);
	}
}
