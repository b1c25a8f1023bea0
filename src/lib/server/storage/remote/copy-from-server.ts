import { rm } from 'node:fs/promises';
import { setTimeout as wait } from 'node:timers/promises';
import type { HttpStream, Value } from '@libsql/hrana-client';
import SqliteFile from 'libsql';
import { storageTrouble } from '../trouble.ts';
import type { DatabaseAddress } from './address.ts';
import { openClient } from './open-client.ts';
import { serverFault } from './server-fault.ts';
import { quoted, readSchema, type StoredTable } from './stored-tables.ts';
import { pagesOf } from './table-pages.ts';

const TRIES = 3;
const BETWEEN_TRIES_MS = 1000;

/**
 * Copies a database on a server into a new file, as it is at one instant: all of it is read in one
 * transaction, which holds up nobody who writes. A server ends what stands still for some seconds, and
 * may be started anew: then it is read again from the beginning.
 */
export async function copyFromServer(address: DatabaseAddress, path: string): Promise<void> {
	for (let tries = TRIES; ; tries--) {
		try {
			await rm(path, { force: true });
			return await copyOnce(address, path);
		} catch (cause) {
			const fault = serverFault(cause);
			const trouble = storageTrouble(fault);
			if (tries <= 1 || (trouble !== 'serverAway' && trouble !== 'locked')) throw fault;
		}
		await wait(BETWEEN_TRIES_MS);
	}
}

async function copyOnce(address: DatabaseAddress, path: string): Promise<void> {
	const client = openClient(address);
	const stream = client.openStream();
	// Whole numbers as they are, of any length, and told from others.
	stream.intMode = 'bigint';
	const file = new SqliteFile(path);
	try {
		// Synced and checked when it is whole; before that nobody relies on it.
		file.pragma('synchronous = OFF');
		file.pragma('foreign_keys = OFF');
		await stream.run('BEGIN');
		const { tables, before, after } = await readSchema(stream);
		for (const statement of before) file.exec(statement);
		for (const table of tables) await copyRows(stream, table, file);
		await copyCounters(stream, file);
		for (const statement of after) file.exec(statement);
		await stream.run('ROLLBACK');
	} finally {
		file.close();
		stream.close();
		client.close();
	}
}

async function copyRows(
	stream: HttpStream,
	table: StoredTable,
	file: SqliteFile.Database
): Promise<void> {
	const places = table.columns.map(() => '?').join(', ');
	const names = table.columns.map(quoted).join(', ');
	const insert = file.prepare(`INSERT INTO ${quoted(table.name)} (${names}) VALUES (${places})`);
	for await (const rows of pagesOf(stream, table)) {
		file.exec('BEGIN');
		for (const row of rows) insert.run(row.map(asBound));
		file.exec('COMMIT');
	}
}

/** The numbers that AUTOINCREMENT has given out, so that none is given again. */
async function copyCounters(stream: HttpStream, file: SqliteFile.Database): Promise<void> {
	const { rows: tables } = await stream.query(
		`SELECT 1 FROM sqlite_master WHERE name = 'sqlite_sequence'`
	);
	if (tables.length === 0) return;
	const { rows } = await stream.query('SELECT name, seq FROM sqlite_sequence');
	file.exec('DELETE FROM sqlite_sequence');
	const insert = file.prepare('INSERT INTO sqlite_sequence (name, seq) VALUES (?, ?)');
	for (const row of rows) insert.run(Array.from(row).map(asBound));
}

function asBound(value: Value): unknown {
	return value instanceof ArrayBuffer ? new Uint8Array(value) : value;
}
