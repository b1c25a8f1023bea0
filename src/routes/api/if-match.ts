import { createHash } from 'node:crypto';
import { json, type RequestEvent } from '@sveltejs/kit';
import { oneAtATime } from '#lib/server/services/one-at-a-time.ts';
import { Problem } from './problem.ts';

/** Something stored that can be changed as it was seen. */
export interface Kept<Stands> {
	/** What changes of it are made one at a time under: its lake, mostly. */
	line: string;
	stands: () => Promise<Stands>;
	/** What of it people change, where there is more to it that changes by itself. */
	version?: (stands: Stands) => unknown;
}

/** What stands, with its ETag. */
export async function told<Stands>(kept: Kept<Stands>): Promise<Response> {
	const stands = await kept.stands();
	return json(stands, { headers: { etag: tagOf(kept, stands) } });
}

/**
 * Makes a change and answers with what it makes, and with the ETag of what stands then. Where the request
 * names ETags in If-Match and none of them stands any more, nothing is changed.
 * @throws Problem 412 with what stands, 400 for an If-Match that is none
 */
export async function changed<Stands>(
	event: Asked,
	kept: Kept<Stands>,
	change: () => Promise<unknown>,
	headers: Record<string, string> = {}
): Promise<Response> {
	return ifStill(event, kept, async () => {
		const answer = await change();
		const etag = tagOf(kept, await kept.stands());
		return json(answer, { headers: { ...headers, etag } });
	});
}

/** Deletes what is stored, with the same condition. @throws Problem as {@link changed} */
export async function deleted<Stands>(
	event: Asked,
	kept: Kept<Stands>,
	remove: () => Promise<unknown>
): Promise<Response> {
	return ifStill(event, kept, async () => {
		await remove();
		return new Response(null, { status: 204 });
	});
}

type Asked = Pick<RequestEvent, 'request' | 'locals'>;

function ifStill<Stands>(
	{ request, locals }: Asked,
	kept: Kept<Stands>,
	change: () => Promise<Response>
): Promise<Response> {
	const asked = tagsAsked(request);
	return oneAtATime(locals.context, kept.line, async () => {
		if (asked === null) return change();
		const stands = await kept.stands();
		const etag = tagOf(kept, stands);
		if (asked.includes(etag)) return change();
		const detail = `Another version stands by now, ${etag}; nothing is changed, and "stands" is the one that does`;
		throw new Problem(412, 'Precondition Failed', detail, { headers: { etag }, more: { stands } });
	});
}

function tagOf<Stands>({ version }: Kept<Stands>, stands: Stands): string {
	const text = JSON.stringify(version ? version(stands) : stands);
	return `"${createHash('sha256').update(text).digest('hex').slice(0, 24)}"`;
}

/** The ETags that `If-Match` names; `null` where it names none, or any. @throws Problem */
function tagsAsked(request: Request): string[] | null {
	const asked = request.headers.get('if-match')?.trim() ?? '*';
	if (asked === '*') return null;
	const tags = asked.split(',').map((tag) => tag.trim());
	if (tags.every((tag) => /^(W\/)?"[^"]*"$/.test(tag))) return tags;
	const detail = `If-Match is ${asked}, but it must be an ETag as it was told, in its quotes`;
	throw new Problem(400, 'Bad Request', detail);
}
