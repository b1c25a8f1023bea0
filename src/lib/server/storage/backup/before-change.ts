import { storageRefusal } from '../migrate.ts';
import { versionOf } from '../schema-version.ts';
import { backupsBeside, nextBackupPath, pruneBackups } from './backup-folder.ts';
import { writeBackup, type BackupSource } from './write-backup.ts';

/** Backs a database up into the data folder before its schema is changed. @throws StorageRefusal */
export async function backUpBefore(
	source: BackupSource,
	dataFolder: string,
	done: readonly string[]
): Promise<void> {
	try {
		const folder = backupsBeside(dataFolder);
		const target = await nextBackupPath(folder, 'schema', versionOf(done), new Date());
		await writeBackup(source, target);
		await pruneBackups(folder, 'schema');
	} catch (cause) {
		const name = typeof source === 'string' ? source : `on ${source.host}`;
		const what = `Database ${name} has an older schema, and the backup before it is changed failed`;
		throw storageRefusal(what, cause);
	}
}
