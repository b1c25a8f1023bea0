import type { RequestHandler } from '@sveltejs/kit';
import { NotFound } from '#lib/server/services/not-found.ts';
import { feedText } from '#lib/server/services/telling/feed-text.ts';
import type { FeedKind } from '#lib/server/services/telling/feeds.ts';
import { conditional } from './conditional.ts';

/** Answers a secret address of a feed. One that was revoked is like one that never was. */
export function feedHandler(kind: FeedKind): RequestHandler {
	return async ({ locals, params, request, url }) => {
		try {
			const sent = await feedText(locals.context, kind, params['secret'] ?? '', url.origin);
			return conditional(request, sent);
		} catch (cause) {
			if (!(cause instanceof NotFound)) throw cause;
			const text = 'Nothing is told at this address, or not any more.\n';
			const headers = { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' };
			return new Response(text, { status: 404, headers });
		}
	};
}
