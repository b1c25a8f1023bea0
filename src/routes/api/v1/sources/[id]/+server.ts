import type { RequestEvent } from '@sveltejs/kit';
import { sourceLine } from '#lib/server/services/one-at-a-time.ts';
import { sourceChange } from '#lib/server/services/sources/input.ts';
import {
	deleteSource,
	getSource,
	updateSource,
	type SourceRecord
} from '#lib/server/services/sources/sources.ts';
import { readJson } from '../../../body.ts';
import { endpoint, onlyMethods } from '../../../endpoint.ts';
import { changed, deleted, told, type Kept } from '../../../if-match.ts';

export const GET = endpoint((event) => told(kept(event)));

export const PATCH = endpoint(async (event) => {
	const change = await readJson(event.request, sourceChange);
	const { id = '' } = event.params;
	return changed(event, kept(event), () => updateSource(event.locals.context, id, change));
});

export const DELETE = endpoint((event) => {
	const { id = '' } = event.params;
	return deleted(event, kept(event), () => deleteSource(event.locals.context, id));
});

export const fallback = onlyMethods('GET', 'PATCH', 'DELETE');

/** How its calls went meanwhile is no change of it. */
function kept({ locals, params }: RequestEvent): Kept<SourceRecord> {
	const { id = '' } = params;
	return {
		line: sourceLine(id),
		stands: () => getSource(locals.context, id),
		version: ({ source, isOn, hasKey }) => [source, isOn, hasKey]
	};
}
