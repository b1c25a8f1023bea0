import type { HttpClient, HttpStream, InValue, RowsResult } from '@libsql/hrana-client';
import type { CompiledQuery, DatabaseConnection, QueryResult } from 'kysely';
import { READS } from '../patient-connection.ts';
import { FORGET_WRITER, NOTE_WRITER, writerValues } from '../writer.ts';
import { inOrder, type Statement } from './in-order.ts';
import { serverFault } from './server-fault.ts';

/**
 * One line of statements to a libSQL server. A single statement goes in one request with its own stream;
 * a transaction keeps its stream until it ends. Whoever writes is noted for as long.
 */
export class RemoteConnection implements DatabaseConnection {
	readonly #client: HttpClient;
	#transaction: HttpStream | null = null;
	#isWriterNoted = false;

	constructor(client: HttpClient) {
		this.#client = client;
	}

	async begin(): Promise<void> {
		const stream = this.#client.openStream();
		try {
			const noted = noteWriter();
			await inOrder(stream, [BEGIN, ...noted]);
			this.#isWriterNoted = noted.length > 0;
			this.#transaction = stream;
		} catch (cause) {
			stream.close();
			throw serverFault(cause);
		}
	}

	async commit(): Promise<void> {
		const stream = this.#transaction;
		this.#transaction = null;
		if (!stream) throw new Error('there is no transaction to be committed');
		const forgotten = this.#isWriterNoted ? [FORGET] : [];
		await finish(stream, inOrder(stream, [...forgotten, COMMIT]));
	}

	/** Of what the server has lost it rolls back by itself. */
	async rollback(): Promise<void> {
		const stream = this.#transaction;
		this.#transaction = null;
		if (stream && !stream.closed)
			await finish(stream, stream.run('ROLLBACK')).catch(() => undefined);
	}

	async executeQuery<Row>({ sql, parameters }: CompiledQuery): Promise<QueryResult<Row>> {
		const statement: Statement = [sql, parameters.map(asValue)];
		const { rows, columnNames, affectedRowCount, lastInsertRowid } = await this.#run(statement);
		return {
			rows: rows.map((row) =>
				Object.fromEntries(columnNames.map((name, at) => [name ?? '', row[at]]))
			) as Row[],
			numAffectedRows: BigInt(affectedRowCount),
			...(lastInsertRowid === undefined ? {} : { insertId: lastInsertRowid })
		};
	}

	async #run(statement: Statement): Promise<RowsResult> {
		if (this.#transaction) {
			return this.#transaction.query(statement).catch((cause: unknown) => {
				throw serverFault(cause);
			});
		}
		const noted = READS.test(statement[0]) ? [] : noteWriter();
		const stream = this.#client.openStream();
		if (noted.length === 0) return finish(stream, stream.query(statement));
		// In one request, and so all of it or nothing.
		const all = [BEGIN, ...noted, statement, FORGET, COMMIT];
		const answers = await finish(stream, inOrder(stream, all));
		return answers[all.indexOf(statement)] as RowsResult;
	}

	streamQuery<Row>(): AsyncIterableIterator<QueryResult<Row>> {
		throw new Error('nothing is streamed from a server');
	}
}

const BEGIN: Statement = ['BEGIN IMMEDIATE', []];
const COMMIT: Statement = ['COMMIT', []];
const FORGET: Statement = [FORGET_WRITER, []];

/** The statement that does so; none where nobody in person writes. */
function noteWriter(): Statement[] {
	const values = writerValues();
	return values === null ? [] : [[NOTE_WRITER, values.map(asValue)]];
}

/** The end of the stream goes with the last statement, in the same request. */
async function finish<Result>(stream: HttpStream, last: Promise<Result>): Promise<Result> {
	stream.closeGracefully();
	try {
		return await last;
	} catch (cause) {
		throw serverFault(cause);
	}
}

/** The protocol tells whole numbers from others, and JavaScript does not. */
function asValue(value: unknown): InValue {
	return Number.isSafeInteger(value) ? BigInt(value as number) : (value as InValue);
}
