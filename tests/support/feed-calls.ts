import type { Context } from '../../src/lib/server/context.ts';
import type { FeedKind } from '../../src/lib/server/services/telling/feeds.ts';
import { GET as calendar } from '../../src/routes/feeds/[secret]/calendar.ics/+server.ts';
import { GET as changes } from '../../src/routes/feeds/[secret]/changes.atom/+server.ts';

/** Asks for a feed as a reader of feeds does. */
export async function fetchFeed(
	context: Context,
	path: string,
	headers: Record<string, string> = {}
): Promise<Response> {
	const url = new URL(path, 'http://lake.test:3000');
	const [, , secret = '', file = ''] = url.pathname.split('/');
	const kind: FeedKind = file === 'calendar.ics' ? 'calendar' : 'changes';
	const handler = kind === 'calendar' ? calendar : changes;
	const request = new Request(url, { headers });
	return handler({ url, request, params: { secret }, locals: { context } } as unknown as never);
}
