import type { IncomingMessage, ServerResponse } from 'node:http';
import { logEvent, withoutSecrets } from '#lib/server/services/log.ts';

/**
 * Logs a request once it is over: what was asked, without the query and the secrets of feeds, which
 * nobody else should read, and without who asked.
 */
export function logWhenDone(request: IncomingMessage, response: ServerResponse): void {
	const begun_ms = performance.now();
	response.once('close', () => {
		const isWhole = response.writableFinished;
		logEvent('request', {
			method: request.method ?? '',
			path: withoutSecrets((request.url ?? '').split('?', 1)[0] ?? ''),
			status: response.headersSent ? response.statusCode : null,
			...(isWhole ? {} : { brokenOff: true }),
			duration_ms: Math.round(performance.now() - begun_ms)
		});
	});
}
