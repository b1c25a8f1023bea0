import { ClientError, HttpServerError, ResponseError } from '@libsql/hrana-client';

/** Codes of the server's own, for what SQLite would tell by another. */
const CODES: Readonly<Record<string, string>> = {
	TRANSACTION_TIMEOUT: 'SQLITE_BUSY',
	TRANSACTION_BUSY: 'SQLITE_BUSY',
	STREAM_EXPIRED: 'SERVER_AWAY'
};

/** A failure with a code that `trouble.ts` knows, as SQLite's own have one. */
export class ServerFault extends Error {
	override name = 'ServerFault';
	readonly code: string;

	constructor(message: string, code: string, cause: unknown) {
		super(message, { cause });
		this.code = code;
	}
}

/** What the server refused, by its code; what kept it from answering, as `SERVER_AWAY` or `SERVER_REFUSES`. */
export function serverFault(cause: unknown): unknown {
	if (cause instanceof ResponseError) {
		if (/timed out/.test(cause.message))
			return new ServerFault(cause.message, 'SQLITE_BUSY', cause);
		const code = cause.code ?? '';
		return new ServerFault(cause.message, CODES[code] ?? code, cause);
	}
	if (cause instanceof HttpServerError) {
		const isRefused = cause.status === 401 || cause.status === 403;
		return new ServerFault(cause.message, isRefused ? 'SERVER_REFUSES' : 'SERVER_AWAY', cause);
	}
	// Of the network, or a stream that was closed by such a failure.
	const isNetwork = cause instanceof ClientError || cause instanceof TypeError || isTimeOut(cause);
	if (!isNetwork) return cause;
	return new ServerFault(String((cause as Error).message), 'SERVER_AWAY', cause);
}

function isTimeOut(cause: unknown): boolean {
	return cause instanceof Error && (cause.name === 'TimeoutError' || cause.name === 'AbortError');
}
