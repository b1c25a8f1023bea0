import { randomUUID } from 'node:crypto';

/** Writes a surprise to the log and returns the id under which it is found there. */
export function logFailure(what: string, cause: unknown): string {
	const id = randomUUID().slice(0, 8);
	const story = cause instanceof Error ? (cause.stack ?? cause.message) : String(cause);
	process.stderr.write(`[${id}] ${what}: ${story}\n`);
	return id;
}
