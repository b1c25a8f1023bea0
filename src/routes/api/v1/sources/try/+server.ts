import { json } from '@sveltejs/kit';
import { tryCall, tryInput } from '#lib/server/services/sources/try-call.ts';
import { readJson } from '../../../body.ts';
import { endpoint, onlyMethods } from '../../../endpoint.ts';

/** Stores nothing. */
export const POST = endpoint(async ({ locals, request }) =>
	json(await tryCall(locals.context, await readJson(request, tryInput)))
);

export const fallback = onlyMethods('POST');
