import { randomUUID } from 'node:crypto';
import { isLogOfJson, logEvent, withoutQueries, withoutSecrets } from './log.ts';

/** Writes a surprise to the log and returns the id under which it is found there. */
export function logFailure(work: string, cause: unknown): string {
	const id = randomUUID().slice(0, 8);
	const what = withoutSecrets(work);
	const told = cause instanceof Error ? (cause.stack ?? cause.message) : String(cause);
	const story = withoutSecrets(withoutQueries(told));
	if (isLogOfJson()) logEvent('failure', { id, what, story }, 'error');
	else process.stderr.write(`[${id}] ${what}: ${story}\n`);
	return id;
}
