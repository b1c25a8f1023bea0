import { existsSync, readdirSync, statSync } from 'node:fs';
import { mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';

/**
 * Why a backup was made: somebody asked for it, the schema was to be changed, or a restored file
 * was to take the place of what was there.
 */
export type BackupReason = 'asked' | 'schema' | 'replaced';

/** How many of each are kept; the oldest go when another is made. */
export const KEPT_BACKUPS: Readonly<Record<BackupReason, number>> = {
	asked: 10,
	schema: 5,
	replaced: 5
};

export interface BackupFile {
	name: string;
	reason: BackupReason;
	/** Of its schema. */
	version: string;
	at: Date;
	size_B: number;
}

/** Backups lie beside the database, in a folder of their own. */
export function backupsBeside(dataFolder: string): string {
	return join(dataFolder, 'backups');
}

/** @example nameOf('schema', '0004', at) // => 'schema-0004-20270110T080000.000Z.db' */
export function nameOf(reason: BackupReason, version: string, at: Date): string {
	const stamp = at.toISOString().replaceAll(/[-:]/g, '');
	return `${reason}-${version}-${stamp}.db`;
}

const NAME = /^(asked|schema|replaced)-(\d{4})-(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d\.\d{3}Z)\.db$/;

/** The backups in a folder, the newest first; other files are not ours. */
export function listBackupFiles(folder: string): BackupFile[] {
	if (!existsSync(folder)) return [];
	const found = readdirSync(folder).flatMap((name) => {
		const parts = NAME.exec(name);
		if (!parts) return [];
		const [, reason, version = '', year, month, day, hour, minute, second] = parts;
		const at = new Date(`${year}-${month}-${day}T${hour}:${minute}:${second}`);
		const size_B = statSync(join(folder, name), { throwIfNoEntry: false })?.size;
		if (size_B === undefined || Number.isNaN(at.getTime())) return [];
		return [{ name, reason: reason as BackupReason, version, at, size_B }];
	});
	return found.toSorted((a, b) => b.at.getTime() - a.at.getTime());
}

/** Where the next backup goes; its folder is made. */
export async function nextBackupPath(
	folder: string,
	reason: BackupReason,
	version: string,
	at: Date
): Promise<string> {
	await mkdir(folder, { recursive: true });
	return join(folder, nameOf(reason, version, at));
}

/** Lets the oldest backups of a reason go. */
export async function pruneBackups(folder: string, reason: BackupReason): Promise<void> {
	const ofReason = listBackupFiles(folder).filter((file) => file.reason === reason);
	for (const { name } of ofReason.slice(KEPT_BACKUPS[reason])) {
		// A damaged file was put aside with what lay beside it.
		for (const end of ['', '-wal', '-journal', '-shm']) {
			await rm(join(folder, name + end), { force: true });
		}
	}
}
