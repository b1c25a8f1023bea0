import type { RequestEvent } from '@sveltejs/kit';
import { asSeenBy } from '#lib/server/services/access/rough-place.ts';
import {
	deleteLake,
	getLake,
	lakeChange,
	updateLake,
	type LakeRecord
} from '#lib/server/services/lakes.ts';
import { readJson } from '../../../body.ts';
import { endpoint, onlyMethods } from '../../../endpoint.ts';
import { changed, deleted, told, type Kept } from '../../../if-match.ts';

export const GET = endpoint((event) => told(kept(event)));

export const PATCH = endpoint(async (event) => {
	const change = await readJson(event.request, lakeChange);
	const { lake = '' } = event.params;
	return changed(event, kept(event), () => updateLake(event.locals.context, lake, change));
});

export const DELETE = endpoint((event) => {
	const { lake = '' } = event.params;
	return deleted(event, kept(event), () => deleteLake(event.locals.context, lake));
});

export const fallback = onlyMethods('GET', 'PATCH', 'DELETE');

function kept({ locals, params }: RequestEvent): Kept<LakeRecord> {
	const { lake = '' } = params;
	const stands = async () => asSeenBy(locals.viewer, await getLake(locals.context, lake));
	return { line: lake, stands };
}
