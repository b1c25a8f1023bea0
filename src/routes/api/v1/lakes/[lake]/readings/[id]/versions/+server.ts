import { json } from '@sveltejs/kit';
import { otherVersions } from '#lib/server/services/edit-reading.ts';
import { endpoint, onlyMethods } from '../../../../../../endpoint.ts';

export const GET = endpoint(async ({ locals, params }) => {
	const { lake = '', id = '' } = params;
	return json(await otherVersions(locals.context, lake, id));
});

export const fallback = onlyMethods('GET');
