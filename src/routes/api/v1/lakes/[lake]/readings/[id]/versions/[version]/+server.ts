import { leaveVersion } from '#lib/server/services/edit-reading.ts';
import { endpoint, onlyMethods } from '../../../../../../../endpoint.ts';

/** Leaves what stands; the version stays among the others, and nobody is asked about it any more. */
export const DELETE = endpoint(async ({ locals, params }) => {
	const { lake = '', id = '', version = '' } = params;
	await leaveVersion(locals.context, lake, id, Number(version));
	return new Response(null, { status: 204 });
});

export const fallback = onlyMethods('DELETE');
