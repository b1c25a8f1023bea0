import { createReadStream, existsSync } from 'node:fs';
import { rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { randomBytes } from 'node:crypto';
import type { Context, Place } from '../context.ts';
import {
	backupsBeside,
	listBackupFiles,
	nextBackupPath,
	pruneBackups,
	type BackupFile
} from '../storage/backup/backup-folder.ts';
import { restoreBackup, type Restored } from '../storage/backup/restore-backup.ts';
import { writeBackup } from '../storage/backup/write-backup.ts';
import { StorageRefusal } from '../storage/refusal.ts';
import { schemaVersionOf } from '../storage/schema-version.ts';
import { logEvent } from './log.ts';
import { NotFound } from './not-found.ts';

/** On a server its owner makes backups, by the server's own means. */
export function backedUpThere(server: string): string {
	return `The database is on the server ${server}, and backups are made and restored there`;
}

export { KEPT_BACKUPS } from '../storage/backup/backup-folder.ts';
export type { BackupFile };

export class BackupNotFound extends NotFound {
	constructor(name: string) {
		super('backup', name);
	}
}

/** The backups that lie beside the database, the newest first. */
export function listBackups({ place }: Context): BackupFile[] {
	return place ? listBackupFiles(backupsBeside(place.folder)) : [];
}

/** Of each database, the backup that is being made. */
const underWay = new WeakMap<Context['db'], Promise<BackupFile>>();

/** Makes a backup beside the database while it is used. Whoever asks meanwhile gets the same one. */
export function makeBackup(ctx: Context): Promise<BackupFile> {
	const running = underWay.get(ctx.db);
	if (running) return running;
	const work = backUp(requirePlace(ctx), ctx.now()).finally(() => underWay.delete(ctx.db));
	underWay.set(ctx.db, work);
	return work;
}

async function backUp({ folder, file }: Place, at: Date): Promise<BackupFile> {
	const begun_ms = performance.now();
	const backups = backupsBeside(folder);
	const target = await nextBackupPath(backups, 'asked', schemaVersionOf(file), at);
	await writeBackup(file, target);
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
	const { folder } = requirePlace(ctx);
	const known = listBackups(ctx).find((file) => file.name === name);
	if (!known) throw new BackupNotFound(name);
	const backups = backupsBeside(folder);
	const sent = join(backups, `sent-${randomBytes(6).toString('hex')}.tmp`);
	await writeBackup(join(backups, name), sent, { withoutKeys: true });
	return streamOnce(sent);
}

async function streamOnce(path: string) {
	const { size } = await stat(path);
	const file = createReadStream(path);
	file.once('close', () => void rm(path, { force: true }));
	return { size_B: size, stream: Readable.toWeb(file) as ReadableStream<Uint8Array> };
}

/** For the command: the database of a data folder to a file of any name. @throws StorageRefusal */
export async function backUpTo({ file }: Place, target: string): Promise<void> {
	await writeBackup(file, target);
}

/** For the command: beside the database, as the app itself does. @throws StorageRefusal */
export async function backUpBeside(place: Place, at: Date): Promise<string> {
	if (!existsSync(place.file)) throw new StorageRefusal(`There is no database ${place.file}`);
	const { name } = await backUp(place, at);
	return join(backupsBeside(place.folder), name);
}

/** For the command. @throws StorageRefusal */
export function restoreFrom(
	source: string,
	{ file }: Place,
	options: { replace: boolean }
): Promise<Restored> {
	return restoreBackup(source, file, options);
}

function requirePlace({ place, server }: Context): Place {
	if (place) return place;
	if (server !== null) throw new StorageRefusal(backedUpThere(server));
	throw new StorageRefusal(
		'Everything is in memory only, and gone when Frostledger stops: FROSTLEDGER_DATA is “:memory:”'
	);
}
