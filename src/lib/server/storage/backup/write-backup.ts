import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { open, readdir, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { DatabaseAddress } from '../remote/address.ts';
import { copyFromServer } from '../remote/copy-from-server.ts';
import { StorageRefusal } from '../refusal.ts';
import { NO_VERSION, schemaVersionOf } from '../schema-version.ts';
import { openAside, rowsOf } from './open-aside.ts';

/**
 * Tables whose rows are keys, addresses that may hold one, or who may come in; rows that hang on them
 * go as well.
 */
export const KEY_TABLES = [
	'source_key',
	'webhook',
	'passphrase',
	'session',
	'known_device',
	'api_token',
	'guest_link',
	'person'
] as const;

/** Middle of the names of files that are not finished. */
const PART = '.part-';
/** Longer than any backup takes: what is older was cut short. */
const STALE_MS = 3_600_000;

/** A database: a file by its path, or one on a server. */
export type BackupSource = string | DatabaseAddress;

export interface BackupOptions {
	/** Leaves out what opens a door, here or elsewhere: the rows of {@link KEY_TABLES}. */
	withoutKeys?: boolean;
}

/**
 * Writes a copy of the database at `source`, as it is at one instant, to `target`. It may be written
 * to meanwhile. The copy is made beside `target`, checked and synced before it gets that name, so
 * that a file of that name is always whole.
 * @throws StorageRefusal when there is no such database, `target` exists, or the copy fails its check.
 */
export async function writeBackup(
	source: BackupSource,
	target: string,
	{ withoutKeys = false }: BackupOptions = {}
): Promise<void> {
	if (typeof source === 'string' && !existsSync(source)) {
		throw new StorageRefusal(`There is no database ${source}`);
	}
	if (existsSync(target)) {
		throw new StorageRefusal(`${target} exists already; give the backup another name`);
	}
	await removeStale(dirname(target));
	const part = `${target}${PART}${randomBytes(4).toString('hex')}`;
	try {
		await copyInto(source, part);
		if (withoutKeys) await takeKeysOut(part);
		await requireWhole(part);
		await sync(part);
		await rename(part, target);
		await sync(dirname(target));
	} finally {
		await rm(part, { force: true });
		await rm(`${part}-journal`, { force: true });
	}
}

async function copyInto(source: BackupSource, part: string): Promise<void> {
	if (typeof source !== 'string') {
		await copyFromServer(source, part);
		if (schemaVersionOf(part) !== NO_VERSION) return;
		throw new StorageRefusal(`There is no database of Frostledger on ${source.host}`);
	}
	await using database = openAside(source);
	// SQLite takes the name as text, in which a quote is doubled.
	await database.exec(`VACUUM INTO '${part.replaceAll("'", "''")}'`);
}

async function takeKeysOut(path: string): Promise<void> {
	await using database = openAside(path);
	await database.exec('PRAGMA foreign_keys = ON');
	const tables = await rowsOf(database, `SELECT name FROM sqlite_master WHERE type = 'table'`);
	for (const table of KEY_TABLES) {
		// A backup of an older schema may not have it.
		if (tables.some(({ name }) => name === table)) await database.exec(`DELETE FROM ${table}`);
	}
	// Without this deleted text would stay in the file's empty pages.
	await database.exec('VACUUM');
}

/** @throws StorageRefusal unless the file is a whole database. */
export async function requireWhole(path: string): Promise<void> {
	await using database = openAside(path);
	const found = await rowsOf(database, 'PRAGMA integrity_check');
	const orphans = await rowsOf(database, 'PRAGMA foreign_key_check');
	const complaints = found.flatMap((row) => Object.values(row)).filter((said) => said !== 'ok');
	if (complaints.length === 0 && orphans.length === 0) return;
	const first = complaints[0] ?? `a row of ${String(orphans[0]?.['table'])} has lost its parent`;
	throw new StorageRefusal(`${basename(path)} is damaged: ${String(first)}`);
}

/** Until this is done a power cut may lose what was written, or the name it was given. */
async function sync(path: string): Promise<void> {
	const handle = await open(path, 'r');
	try {
		await handle.sync();
	} finally {
		await handle.close();
	}
}

async function removeStale(folder: string): Promise<void> {
	for (const name of await readdir(folder)) {
		if (!/\.part-[0-9a-f]{8}(-journal)?$|^sent-[0-9a-f]{12}\.tmp$/.test(name)) continue;
		const path = join(folder, name);
		const found = await stat(path).catch(() => null);
		if (found && Date.now() - found.mtimeMs > STALE_MS) await rm(path, { force: true });
	}
}
