import type { BackupFile } from '#lib/server/services/backups.ts';
import { bytes } from '#lib/ui/format/bytes.ts';
import { ago, moment } from '#lib/ui/format/moment.ts';

const REASONS: Readonly<Record<BackupFile['reason'], string>> = {
	asked: 'You asked for it',
	schema: 'Before a new version changed how things are stored',
	replaced: 'What was there before another backup was restored'
};

/** One backup as the list shows it. */
export function backupRow({ name, at, reason, size_B }: BackupFile, now: Date) {
	return {
		name,
		iso: at.toISOString(),
		when: `${moment(at, now, 'UTC')} UTC`,
		ago: ago(at, now),
		why: REASONS[reason],
		size: bytes(size_B)
	};
}

export type BackupRow = ReturnType<typeof backupRow>;
