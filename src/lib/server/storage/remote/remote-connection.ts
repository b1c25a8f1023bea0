import type { HttpClient, HttpStream, InValue } from '@libsql/hrana-client';
import type { CompiledQuery, DatabaseConnection, QueryResult } from 'kysely';
import { serverFault } from './server-fault.ts';

type Statement = [sql: string, args: InValue[]];

/**
 * One line of statements to a libSQL server. A single statement goes in one request with its own stream;
 * a transaction keeps its stream until it ends.
 */
export class RemoteConnection implements DatabaseConnection {
	readonly #client: HttpClient;
	#transaction: HttpStream | null = null;

	constructor(client: HttpClient) {
		this.#client = client;
	}

	async begin(): Promise<void> {
		const stream = this.#client.openStream();
		try {
			await stream.run('BEGIN IMMEDIATE');
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
		await finish(stream, stream.run('COMMIT'));
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

	#run(statement: Statement) {
		if (this.#transaction) {
			return this.#transaction.query(statement).catch((cause: unknown) => {
				throw serverFault(cause);
			});
		}
		const stream = this.#client.openStream();
		return finish(stream, stream.query(statement));
	}

	streamQuery<Row>(): AsyncIterableIterator<QueryResult<Row>> {
		throw new Error('nothing is streamed from a server');
	}
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
