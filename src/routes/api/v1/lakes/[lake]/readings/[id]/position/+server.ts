import type { RequestEvent } from '@sveltejs/kit';
import {
	getPosition,
	positionInput,
	putPosition,
	type Position
} from '#lib/server/services/reading-positions.ts';
import { readJson } from '../../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../../endpoint.ts';
import { changed, deleted, told, type Kept } from '../../../../../../if-match.ts';

export const GET = endpoint((event) => told(kept(event)));

export const PUT = endpoint(async (event) => {
	const { lake = '', id = '' } = event.params;
	const position = await readJson(event.request, positionInput);
	return changed(event, kept(event), async () => {
		await putPosition(event.locals.context, lake, id, position);
		return { position };
	});
});

export const DELETE = endpoint((event) => {
	const { lake = '', id = '' } = event.params;
	return deleted(event, kept(event), () => putPosition(event.locals.context, lake, id, null));
});

export const fallback = onlyMethods('GET', 'PUT', 'DELETE');

function kept({ locals, params }: RequestEvent): Kept<{ position: Position | null }> {
	const { lake = '', id = '' } = params;
	const stands = async () => ({ position: await getPosition(locals.context, lake, id) });
	return { line: lake, stands };
}
