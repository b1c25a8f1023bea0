import { json } from '@sveltejs/kit';
import { newSourceOrExport } from '#lib/server/services/sources/input.ts';
import { createSource, listSources } from '#lib/server/services/sources/sources.ts';
import { readJson } from '../../body.ts';
import { endpoint, onlyMethods } from '../../endpoint.ts';

export const GET = endpoint(async ({ locals }) => json(await listSources(locals.context)));

/** Takes what {@link createSource} takes, or a source as it was exported. */
export const POST = endpoint(async ({ locals, request }) => {
	const source = await createSource(locals.context, await readJson(request, newSourceOrExport));
	return json(source, { status: 201, headers: { location: `/api/v1/sources/${source.id}` } });
});

export const fallback = onlyMethods('GET', 'POST');
