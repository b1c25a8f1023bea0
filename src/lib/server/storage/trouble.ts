/** What keeps a database from storing: none of it is a fault of the app or of what was sent. */
export type StorageTrouble =
	'full' | 'readOnly' | 'locked' | 'damaged' | 'unreachable' | 'serverAway' | 'serverRefuses';

const BY_CODE: readonly [start: string, trouble: StorageTrouble][] = [
	['SQLITE_FULL', 'full'],
	['ENOSPC', 'full'],
	['EDQUOT', 'full'],
	['SQLITE_READONLY', 'readOnly'],
	['EROFS', 'readOnly'],
	['EACCES', 'readOnly'],
	['EPERM', 'readOnly'],
	['SQLITE_BUSY', 'locked'],
	['SQLITE_CORRUPT', 'damaged'],
	['SQLITE_NOTADB', 'damaged'],
	['SQLITE_IOERR', 'unreachable'],
	['SQLITE_CANTOPEN', 'unreachable'],
	['EIO', 'unreachable'],
	['SERVER_AWAY', 'serverAway'],
	['SERVER_REFUSES', 'serverRefuses']
];

/** The trouble that a failure, or what caused it, comes from; `null` when it is something else. */
export function storageTrouble(failure: unknown): StorageTrouble | null {
	for (let cause = failure; cause instanceof Error; cause = cause.cause) {
		const code = 'code' in cause && !isOfNetwork(cause) ? String(cause.code) : '';
		const known = BY_CODE.find(([start]) => code.startsWith(start));
		if (known) return known[1];
	}
	return null;
}

/** Rights to the network go by the same codes. */
function isOfNetwork(cause: Error): boolean {
	return 'syscall' in cause && ['connect', 'listen', 'bind'].includes(String(cause.syscall));
}

const SENTENCES: Record<StorageTrouble, string> = {
	full: 'The disk that the data folder lies on is full, so nothing can be stored. Make room on it and try again',
	readOnly:
		'The data folder cannot be written to, so nothing can be stored. Give this account the right to write there and try again',
	locked: 'Another program holds the database locked. Try again; if it lasts, find that program',
	damaged:
		'The database file is damaged. Stop Frostledger, keep the file, and restore the last backup',
	serverAway:
		'The server that holds the database does not answer, so nothing can be read or stored. See whether it runs and can be reached, and try again',
	serverRefuses:
		'The server that holds the database refuses this app: FROSTLEDGER_DATABASE_TOKEN is missing, wrong or has run out',
	unreachable:
		'The disk that the data folder lies on does not answer as it should. See whether it is still there, and full or damaged'
};

/** The trouble in a sentence with what to do, without its full stop. */
export function troubleSentence(trouble: StorageTrouble): string {
	return SENTENCES[trouble];
}
