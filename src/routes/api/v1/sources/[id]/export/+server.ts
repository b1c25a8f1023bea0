import { getSource } from '#lib/server/services/sources/sources.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { Problem } from '../../../../problem.ts';

/** The source as a file to pass on; there is no key in it. */
export const GET = endpoint(async ({ locals, params }) => {
	const { id, source, problem } = await getSource(locals.context, params['id'] ?? '');
	if (!source) throw new Problem(409, 'Conflict', problem ?? 'The source cannot be read');
	return new Response(`${JSON.stringify(source, null, '\t')}\n`, {
		headers: {
			'content-type': 'application/json',
			'content-disposition': `attachment; filename="${id}.json"`
		}
	});
});

export const fallback = onlyMethods('GET');
