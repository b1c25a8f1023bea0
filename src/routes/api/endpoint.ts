import { isHttpError, type RequestEvent } from '@sveltejs/kit';
import { ZodError } from 'zod';
import { logFailure } from '#lib/server/services/failure.ts';
import { StorageRefusal, troubleOf } from '#lib/server/services/storage-trouble.ts';
import { NotFound } from '#lib/server/services/not-found.ts';
import { ClientIdTaken } from '#lib/server/services/send-readings.ts';
import { invalid, Problem, problemResponse } from './problem.ts';

type Handler = (event: RequestEvent) => Promise<Response> | Response;

/** Gives every failure of a handler its problem details. */
export function endpoint(handler: Handler): Handler {
	return async (event) => {
		try {
			return await handler(event);
		} catch (cause) {
			return problemResponse(toProblem(cause, event), event.url.pathname);
		}
	};
}

/** For the methods that an address does not have. */
export function onlyMethods(...methods: string[]): Handler {
	const allow = [...methods, ...(methods.includes('GET') ? ['HEAD'] : [])].join(', ');
	return endpoint(({ request }) => {
		const detail = `${request.method} does nothing here; the address takes ${allow}`;
		throw new Problem(405, 'Method Not Allowed', detail, { headers: { allow } });
	});
}

function toProblem(cause: unknown, { request, url }: RequestEvent): Problem {
	if (cause instanceof Problem) return cause;
	if (cause instanceof NotFound) return new Problem(404, 'Not Found', cause.message);
	if (cause instanceof ZodError) return invalid('input', cause);
	if (isHttpError(cause)) return new Problem(cause.status, 'Refused', cause.body.message);
	if (isTooLarge(cause)) {
		return new Problem(413, 'Content Too Large', 'The body is larger than this server takes');
	}
	if (cause instanceof ClientIdTaken) return new Problem(409, 'Conflict', cause.message);
	// Nothing is wrong with the server: it says why it will not.
	if (cause instanceof StorageRefusal) return new Problem(409, 'Conflict', cause.message);
	const id = logFailure(`${request.method} ${url.pathname}`, cause);
	const trouble = troubleOf(cause);
	if (trouble !== null) return new Problem(503, 'Service Unavailable', trouble);
	return new Problem(
		500,
		'Internal Server Error',
		`Something failed here; the log has it as ${id}`
	);
}

/** The body's stream breaks off with an error of Kit's own that carries this status. */
function isTooLarge(cause: unknown): boolean {
	return cause instanceof Error && 'status' in cause && cause.status === 413;
}
