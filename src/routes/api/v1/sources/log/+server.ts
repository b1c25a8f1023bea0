import { json } from '@sveltejs/kit';
import { listLog } from '#lib/server/services/sources/log.ts';
import { endpoint, onlyMethods } from '../../../endpoint.ts';
import { logQuery, readQuery } from '../../../query.ts';

export const GET = endpoint(async ({ locals, url }) => {
	const { onlyFaults, ...filter } = readQuery(url, logQuery);
	const isOnly = onlyFaults === '1' || onlyFaults === 'true';
	return json(await listLog(locals.context, { ...filter, onlyFaults: isOnly }));
});

export const fallback = onlyMethods('GET');
