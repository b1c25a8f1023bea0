import { createHash } from 'node:crypto';

export interface Sent {
	text: string;
	type: string;
	changedAt: Date;
}

/**
 * Sends a text with what makes the next request conditional, or 304 where the asker has it already
 * (RFC 9110, 13): `If-None-Match` decides where it is there, else `If-Modified-Since`.
 */
export function conditional(request: Request, { text, type, changedAt }: Sent): Response {
	const tag = `W/"${createHash('sha256').update(text).digest('base64url').slice(0, 27)}"`;
	const headers = {
		etag: tag,
		'last-modified': changedAt.toUTCString(),
		// Kept by the asker alone, and asked for again each time.
		'cache-control': 'private, no-cache',
		'x-robots-tag': 'noindex'
	};
	if (isKnown(request.headers, tag, changedAt)) return new Response(null, { status: 304, headers });
	return new Response(text, { headers: { ...headers, 'content-type': type } });
}

function isKnown(headers: Headers, tag: string, changedAt: Date): boolean {
	const tags = headers.get('if-none-match');
	if (tags !== null) {
		const opaque = tag.slice(2);
		return tags.trim() === '*' || tags.split(',').some((each) => plain(each) === opaque);
	}
	const since = Date.parse(headers.get('if-modified-since') ?? '');
	// An HTTP date has no fractions of a second.
	return Number.isFinite(since) && Math.floor(changedAt.getTime() / 1000) * 1000 <= since;
}

/** Weak or strong is the same here. */
function plain(tag: string): string {
	return tag.trim().replace(/^W\//, '');
}
