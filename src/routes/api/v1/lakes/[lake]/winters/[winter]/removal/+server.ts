import type { RequestEvent } from '@sveltejs/kit';
import { winterId } from '#lib/server/services/fields.ts';
import {
	getRemoval,
	loadIds,
	removalInputFor,
	saveRemoval,
	type RemovalRecord
} from '#lib/server/services/removal.ts';
import { readJson } from '../../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../../endpoint.ts';
import { changed, told, type Kept } from '../../../../../../if-match.ts';
import { invalid } from '../../../../../../problem.ts';

export const GET = endpoint((event) => told(kept(event)));

export const PUT = endpoint(async (event) => {
	const { context } = event.locals;
	const [lake, winter] = [event.params['lake'] ?? '', readWinter(event.params['winter'])];
	const loads = await loadIds(context, lake);
	const record = await readJson(event.request, removalInputFor(winter, loads));
	return changed(event, kept(event), () => saveRemoval(context, lake, winter, record));
});

export const fallback = onlyMethods('GET', 'PUT');

function kept({ locals, params }: RequestEvent): Kept<RemovalRecord> {
	const [lake, winter] = [params['lake'] ?? '', readWinter(params['winter'])];
	return { line: lake, stands: () => getRemoval(locals.context, lake, winter) };
}

function readWinter(text: string | undefined): string {
	const parsed = winterId.safeParse(text);
	if (!parsed.success) throw invalid('winter in the address', parsed.error);
	return parsed.data;
}
