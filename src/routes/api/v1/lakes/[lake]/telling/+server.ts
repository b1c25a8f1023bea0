import { json } from '@sveltejs/kit';
import {
	getTelling,
	tellingChange,
	updateTellingOf
} from '#lib/server/services/telling/settings.ts';
import { readJson } from '../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';

export const GET = endpoint(async ({ locals, params }) =>
	json(await getTelling(locals.context, params['lake'] ?? ''))
);

export const PATCH = endpoint(async ({ locals, params, request }) => {
	const change = await readJson(request, tellingChange);
	return json(await updateTellingOf(locals.context, params['lake'] ?? '', change));
});

export const fallback = onlyMethods('GET', 'PATCH');
