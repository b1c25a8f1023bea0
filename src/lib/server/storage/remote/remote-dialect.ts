import type { HttpClient } from '@libsql/hrana-client';
import {
	SqliteAdapter,
	SqliteDialect,
	type DatabaseConnection,
	type Driver,
	type Kysely
} from 'kysely';
import type { DatabaseAddress } from './address.ts';
import { openClient } from './open-client.ts';
import { RemoteConnection } from './remote-connection.ts';

/** Kysely's dialect of SQLite, spoken to a libSQL server by its published protocol over HTTP. */
export class RemoteDialect extends SqliteDialect {
	readonly #address: DatabaseAddress;

	constructor(address: DatabaseAddress) {
		super({ database: () => Promise.reject(new Error('there is no file')) });
		this.#address = address;
	}

	override createAdapter(): RemoteAdapter {
		return new RemoteAdapter();
	}

	override createDriver(): Driver {
		return new RemoteDriver(openClient(this.#address));
	}
}

export class RemoteAdapter extends SqliteAdapter {
	override get supportsTransactionalDdl(): boolean {
		return true;
	}
}

/** Whether a database is on a server: what only a file can do is left out then. */
export function isRemote(db: Pick<Kysely<never>, 'getExecutor'>): boolean {
	return db.getExecutor().adapter instanceof RemoteAdapter;
}

/** Statements side by side, as the server takes them; transactions of this process one after the other. */
class RemoteDriver implements Driver {
	readonly #client: HttpClient;
	/** Ends with the transaction that was begun last. */
	#last: Promise<void> = Promise.resolve();
	readonly #ends = new WeakMap<DatabaseConnection, () => void>();

	constructor(client: HttpClient) {
		this.#client = client;
	}

	async init(): Promise<void> {}

	async acquireConnection(): Promise<RemoteConnection> {
		return new RemoteConnection(this.#client);
	}

	async beginTransaction(connection: RemoteConnection): Promise<void> {
		const before = this.#last;
		this.#last = new Promise((end) => this.#ends.set(connection, end));
		await before;
		try {
			await connection.begin();
		} catch (cause) {
			this.#end(connection);
			throw cause;
		}
	}

	async commitTransaction(connection: RemoteConnection): Promise<void> {
		await connection.commit().finally(() => this.#end(connection));
	}

	async rollbackTransaction(connection: RemoteConnection): Promise<void> {
		await connection.rollback().finally(() => this.#end(connection));
	}

	#end(connection: RemoteConnection): void {
		this.#ends.get(connection)?.();
		this.#ends.delete(connection);
	}

	async releaseConnection(): Promise<void> {}

	async destroy(): Promise<void> {
		this.#client.close();
	}
}
