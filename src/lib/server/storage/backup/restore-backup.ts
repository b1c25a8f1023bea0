import { constants, existsSync } from 'node:fs';
import { copyFile, link, mkdir, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';
import SqliteFile from 'libsql';
import type { DatabaseAddress } from '../remote/address.ts';
import { copyToServer } from '../remote/copy-to-server.ts';
import { StorageRefusal } from '../refusal.ts';
import { changesOf, refuseNewer, versionOf } from '../schema-version.ts';
import { storageTrouble } from '../trouble.ts';
import { backupsBeside, nextBackupPath, pruneBackups } from './backup-folder.ts';
import { requireWhole, writeBackup } from './write-backup.ts';

export interface Restored {
	/** Where what was there before has been put; `null` when there was nothing. */
	replaced: string | null;
}

/**
 * Puts a copy of the backup at `source` in the place of the database `target`. What is there already
 * is refused, or with `replace` moved to the backups; at no moment is there half a file.
 * @throws StorageRefusal when the backup is not whole, newer than this app, or `target` is in use.
 */
export async function restoreBackup(
	source: string,
	target: string,
	{ replace = false }: { replace?: boolean } = {}
): Promise<Restored> {
	requireBackup(source);
	const isThere = [target, `${target}-wal`, `${target}-journal`].some(existsSync);
	if (isThere && !replace) {
		throw new StorageRefusal(
			`${dirname(target)} has a database already. To put the backup in its place, add --replace; ` +
				'what is there is kept among the backups'
		);
	}
	await mkdir(dirname(target), { recursive: true });
	const fresh = `${target}.restored`;
	await rm(fresh, { force: true });
	await writeBackup(source, fresh);
	try {
		const replaced = isThere ? await putAside(target) : null;
		await rename(fresh, target);
		return { replaced };
	} finally {
		await rm(fresh, { force: true });
	}
}

/**
 * Puts what the backup at `source` holds into an empty database on a server, all or nothing.
 * @throws StorageRefusal when the backup is not whole, newer than this app, or the database not empty.
 */
export async function restoreOnServer(source: string, address: DatabaseAddress): Promise<void> {
	requireBackup(source);
	await requireWhole(source);
	await copyToServer(source, address);
}

/** @throws StorageRefusal unless it is a backup that this version can read. */
function requireBackup(source: string): void {
	if (!existsSync(source)) throw new StorageRefusal(`There is no file ${source}`);
	const done = withFile(source, changesOf, () => {
		throw new StorageRefusal(`${source} is not a database`);
	});
	if (done.length === 0) throw new StorageRefusal(`${source} is not a database of Frostledger`);
	refuseNewer(done, source);
}

/** Keeps the file under another name as well; it is in its place until the new one is. */
async function putAside(target: string): Promise<string> {
	const version = requireUnused(target);
	const folder = backupsBeside(dirname(target));
	const aside = await nextBackupPath(folder, 'replaced', version, new Date());
	if (existsSync(target)) {
		await link(target, aside).catch(() => copyFile(target, aside, constants.COPYFILE_EXCL));
	}
	// What is left beside a damaged file would be taken for changes of the new one.
	for (const end of ['-wal', '-journal', '-shm']) {
		if (existsSync(target + end)) await rename(target + end, aside + end);
	}
	await pruneBackups(folder, 'replaced');
	return aside;
}

/**
 * Tells the version of the file that is to make way. Leaving the write-ahead mode needs the file for
 * oneself, so that a running app is found out, and it puts all changes into the one file.
 */
function requireUnused(target: string): string {
	if (!existsSync(target)) return '0000';
	return withFile(
		target,
		(file) => {
			const version = versionOf(changesOf(file));
			file.pragma('journal_mode = DELETE');
			return version;
		},
		(cause) => {
			if (storageTrouble(cause) !== 'locked') return '0000';
			throw new StorageRefusal(
				`${target} is in use. Stop Frostledger first: it would go on writing to the old file`
			);
		}
	);
}

function withFile<T>(
	path: string,
	use: (file: SqliteFile.Database) => T,
	otherwise: (cause: unknown) => T
): T {
	const file = new SqliteFile(path);
	try {
		return use(file);
	} catch (cause) {
		return otherwise(cause);
	} finally {
		file.close();
	}
}
