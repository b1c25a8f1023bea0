import { json } from '@sveltejs/kit';
import { whyNotReady } from '#lib/server/services/readiness.ts';
import { endpoint, onlyMethods } from '../../endpoint.ts';
import { Problem } from '../../problem.ts';

export const GET = endpoint(async ({ locals }) => {
	const reason = await whyNotReady(locals.context);
	if (reason !== null) throw new Problem(503, 'Service Unavailable', reason);
	return json({ status: 'ready' });
});

export const fallback = onlyMethods('GET');
