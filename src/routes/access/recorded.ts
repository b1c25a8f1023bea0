import type { RequestEvent } from '@sveltejs/kit';
import { nameOf } from '#lib/server/services/access/viewer.ts';
import { writingAs } from '#lib/server/services/history/history.ts';

const READING = new Set(['GET', 'HEAD', 'OPTIONS']);

/** Runs what may change something under the name of who asked. */
export function recorded<Result>({ request, locals }: RequestEvent, work: () => Result): Result {
	if (READING.has(request.method)) return work();
	return writingAs({ name: nameOf(locals.viewer), at: locals.context.now() }, work);
}
