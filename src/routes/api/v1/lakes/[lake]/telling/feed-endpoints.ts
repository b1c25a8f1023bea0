import { json } from '@sveltejs/kit';
import { makeFeed, revokeFeed, type FeedKind } from '#lib/server/services/telling/feeds.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';

/** Switches a feed on or gives it another address, told this once; and revokes it. */
export function feedEndpoints(kind: FeedKind) {
	return {
		POST: endpoint(async ({ locals, params, url }) => {
			const path = await makeFeed(locals.context, params['lake'] ?? '', kind);
			const address = `${locals.context.address ?? url.origin}${path}`;
			return json({ address }, { status: 201, headers: { 'cache-control': 'no-store' } });
		}),
		DELETE: endpoint(async ({ locals, params }) => {
			await revokeFeed(locals.context, params['lake'] ?? '', kind);
			return new Response(null, { status: 204 });
		}),
		fallback: onlyMethods('POST', 'DELETE')
	};
}
