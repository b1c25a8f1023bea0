import { json } from '@sveltejs/kit';
import { winterId } from '#lib/server/services/fields.ts';
import { getRemoval, loadIds, removalInputFor, saveRemoval } from '#lib/server/services/removal.ts';
import { readJson } from '../../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../../endpoint.ts';
import { invalid } from '../../../../../../problem.ts';

export const GET = endpoint(async ({ locals, params }) => {
	const winter = readWinter(params['winter']);
	return json(await getRemoval(locals.context, params['lake'] ?? '', winter));
});

export const PUT = endpoint(async ({ locals, params, request }) => {
	const lake = params['lake'] ?? '';
	const winter = readWinter(params['winter']);
	const loads = await loadIds(locals.context, lake);
	const record = await readJson(request, removalInputFor(winter, loads));
	return json(await saveRemoval(locals.context, lake, winter, record));
});

export const fallback = onlyMethods('GET', 'PUT');

function readWinter(text: string | undefined): string {
	const parsed = winterId.safeParse(text);
	if (!parsed.success) throw invalid('winter in the address', parsed.error);
	return parsed.data;
}
