import { createReadStream, existsSync } from 'node:fs';
import { rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { randomBytes } from 'node:crypto';
import type { Context, Kept } from '../context.ts';
import {
	backupsBeside,
	listBackupFiles,
	nextBackupPath,
	pruneBackups,
	type BackupFile
} from '../storage/backup/backup-folder.ts';
import { restoreBackup, restoreOnServer, type Restored } from '../storage/backup/restore-backup.ts';
import { writeBackup } from '../storage/backup/write-backup.ts';
import { StorageRefusal } from '../storage/refusal.ts';
import { schemaVersionOf } from '../storage/schema-version.ts';
import { versionOnServer } from '../storage/remote/version-on-server.ts';
import { logEvent } from './log.ts';
import { NotFound } from './not-found.ts';

export { KEPT_BACKUPS } from '../storage/backup/backup-folder.ts';
export type { BackupFile };

export class BackupNotFound extends NotFound {
	constructor(name: string) {
		super('backup', name);
	}
}

/** The backups that lie in the data folder, the newest first. */
export function listBackups({ kept }: Context): BackupFile[] {
	return kept ? listBackupFiles(backupsBeside(kept.folder)) : [];
}

/** Of each database, the backup that is being made. */
const underWay = new WeakMap<Context['db'], Promise<BackupFile>>();

/** Makes a backup into the data folder while the database is used. Whoever asks meanwhile gets the same one. */
export function makeBackup(ctx: Context): Promise<BackupFile> {
	const running = underWay.get(ctx.db);
	if (running) return running;
	const work = backUp(requireKept(ctx), ctx.now()).finally(() => underWay.delete(ctx.db));
	underWay.set(ctx.db, work);
	return work;
}

async function backUp({ folder, database }: Kept, at: Date): Promise<BackupFile> {
	const begun_ms = performance.now();
	const backups = backupsBeside(folder);
	const target = await nextBackupPath(backups, 'asked', await versionAt(database), at);
	await writeBackup(database, target);
	await pruneBackups(backups, 'asked');
	const [made] = listBackupFiles(backups).filter(({ name }) => target.endsWith(name));
	if (!made) throw new StorageRefusal(`The backup ${target} was taken away as it was made`);
	const duration_ms = Math.round(performance.now() - begun_ms);
	logEvent('backup', { name: made.name, size_B: made.size_B, duration_ms });
	return made;
}

/**
 * A backup as it may leave the machine: without the keys of weather services, webhooks, and who may
 * come in.
 * @throws BackupNotFound
 */
export async function sendBackup(
	ctx: Context,
	name: string
): Promise<{ size_B: number; stream: ReadableStream<Uint8Array> }> {
	const { folder } = requireKept(ctx);
	const known = listBackups(ctx).find((file) => file.name === name);
	if (!known) throw new BackupNotFound(name);
	const backups = backupsBeside(folder);
	const sent = join(backups, `sent-${randomBytes(6).toString('hex')}.tmp`);
	await writeBackup(join(backups, name), sent, { withoutKeys: true });
	return streamOnce(sent);
}

async function versionAt(database: Kept['database']): Promise<string> {
	return typeof database === 'string' ? schemaVersionOf(database) : versionOnServer(database);
}

async function streamOnce(path: string) {
	const { size } = await stat(path);
	const file = createReadStream(path);
	file.once('close', () => void rm(path, { force: true }));
	return { size_B: size, stream: Readable.toWeb(file) as ReadableStream<Uint8Array> };
}

/** For the command: the database to a file of any name. @throws StorageRefusal */
export async function backUpTo({ database }: Kept, target: string): Promise<void> {
	await writeBackup(database, target);
}

/** For the command: into the data folder, as the app itself does. @throws StorageRefusal */
export async function backUpBeside(kept: Kept, at: Date): Promise<string> {
	const { folder, database } = kept;
	if (typeof database === 'string' && !existsSync(database)) {
		throw new StorageRefusal(`There is no database ${database}`);
	}
	const { name } = await backUp(kept, at);
	return join(backupsBeside(folder), name);
}

/** For the command. @throws StorageRefusal */
export async function restoreFrom(
	source: string,
	{ database }: Kept,
	options: { replace: boolean }
): Promise<Restored> {
	if (typeof database === 'string') return restoreBackup(source, database, options);
	await restoreOnServer(source, database);
	return { replaced: null };
}

function requireKept({ kept, server }: Context): Kept {
	if (kept) return kept;
	if (server !== null) {
		throw new StorageRefusal(
			'Backups need a folder to lie in: FROSTLEDGER_DATA is “:memory:”. Name a folder there'
		);
	}
	throw new StorageRefusal(
		'Everything is in memory only, and gone when Frostledger stops: FROSTLEDGER_DATA is “:memory:”'
	);
}
