import type { HttpStream, InValue } from '@libsql/hrana-client';
import SqliteFile from 'libsql';
import { z } from 'zod';
import { StorageRefusal } from '../refusal.ts';
import type { DatabaseAddress } from './address.ts';
import { openClient } from './open-client.ts';
import { serverFault } from './server-fault.ts';
import { anyTable, quoted } from './stored-tables.ts';

/** Values that go in one request: SQLite takes 32,766 in a statement. */
const MOST_VALUES = 4_000;

/**
 * Puts what a file holds into an empty database on a server, all or nothing.
 * @throws StorageRefusal where the database is not empty
 */
export async function copyToServer(path: string, address: DatabaseAddress): Promise<void> {
	const client = openClient(address);
	const stream = client.openStream();
	const file = new SqliteFile(path);
	try {
		await stream.run('BEGIN IMMEDIATE');
		await requireEmpty(stream, address);
		file.exec('BEGIN');
		await stream.run('PRAGMA defer_foreign_keys = ON');
		const parts = readParts(file);
		for (const { sql } of parts.filter(isTable)) await stream.run(sql);
		for (const { name } of parts.filter(isTable)) await copyRows(file, name, stream);
		await copyCounters(file, stream);
		for (const part of parts) if (!isTable(part)) await stream.run(part.sql);
		await stream.run('COMMIT');
	} catch (cause) {
		throw serverFault(cause);
	} finally {
		file.close();
		// What was not committed goes with the stream.
		stream.close();
		client.close();
	}
}

async function requireEmpty(stream: HttpStream, { host }: DatabaseAddress): Promise<void> {
	const found = await anyTable(stream);
	if (found === null) return;
	throw new StorageRefusal(
		`The database on ${host} is not empty: it has the table “${found}”. Name an empty one in ` +
			'FROSTLEDGER_DATABASE: on a server nothing is replaced. Nothing has been changed'
	);
}

const partRows = z.array(z.object({ type: z.string(), name: z.string(), sql: z.string() }));

function readParts(file: SqliteFile.Database) {
	const rows: unknown = file
		.prepare(
			`SELECT type, name, sql FROM sqlite_master
			WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' ORDER BY rowid`
		)
		.all();
	return partRows.parse(rows);
}

function isTable({ type }: { type: string }): boolean {
	return type === 'table';
}

async function copyRows(
	file: SqliteFile.Database,
	table: string,
	stream: HttpStream
): Promise<void> {
	const rows = file
		.prepare(`SELECT * FROM ${quoted(table)}`)
		.raw()
		.safeIntegers();
	let values: InValue[] = [];
	let width = 1;
	const send = () => insertRows(stream, quoted(table), values, width);
	for (const row of rows.iterate() as Iterable<InValue[]>) {
		width = row.length;
		values.push(...row);
		if (values.length < MOST_VALUES) continue;
		await send();
		values = [];
	}
	if (values.length > 0) await send();
}

async function insertRows(
	stream: HttpStream,
	table: string,
	values: InValue[],
	width: number
): Promise<void> {
	const row = `(${Array.from({ length: width }, () => '?').join(', ')})`;
	const rows = Array.from({ length: values.length / width }, () => row).join(', ');
	await stream.run([`INSERT INTO ${table} VALUES ${rows}`, values]);
}

/** The numbers that AUTOINCREMENT has given out, so that none is given again. */
async function copyCounters(file: SqliteFile.Database, stream: HttpStream): Promise<void> {
	const there = file.prepare(`SELECT 1 FROM sqlite_master WHERE name = 'sqlite_sequence'`).all();
	if (there.length === 0) return;
	await stream.run('DELETE FROM sqlite_sequence');
	await copyRows(file, 'sqlite_sequence', stream);
}
