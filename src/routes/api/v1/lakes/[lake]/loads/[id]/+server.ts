import type { RequestEvent } from '@sveltejs/kit';
import type { LoadCase } from '#lib/model/load-case.ts';
import { loadChange } from '#lib/server/services/load-input.ts';
import { deleteLoad, getLoad, updateLoad } from '#lib/server/services/own-loads.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { changed, deleted, told, type Kept } from '../../../../../if-match.ts';

export const GET = endpoint((event) => told(kept(event)));

export const PATCH = endpoint(async (event) => {
	const change = await readJson(event.request, loadChange);
	return changed(event, kept(event), () =>
		updateLoad(event.locals.context, ...named(event), change)
	);
});

export const DELETE = endpoint((event) =>
	deleted(event, kept(event), () => deleteLoad(event.locals.context, ...named(event)))
);

export const fallback = onlyMethods('GET', 'PATCH', 'DELETE');

function named({ params }: RequestEvent): [lake: string, id: string] {
	return [params['lake'] ?? '', params['id'] ?? ''];
}

function kept(event: RequestEvent): Kept<LoadCase> {
	const [lake, id] = named(event);
	return { line: lake, stands: () => getLoad(event.locals.context, lake, id) };
}
