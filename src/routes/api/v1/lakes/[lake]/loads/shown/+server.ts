import { json } from '@sveltejs/kit';
import type { LoadCase } from '#lib/model/load-case.ts';
import { LoadNotFound } from '#lib/server/services/own-loads.ts';
import { listedLoads, setShownLoads, shownInput } from '#lib/server/services/shown-loads.ts';
import { readJson } from '../../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../../endpoint.ts';
import { Problem } from '../../../../../problem.ts';

export const GET = endpoint(async ({ locals, params }) => {
	const loads = await listedLoads(locals.context, params['lake'] ?? '');
	return answer(loads.filter(({ isShown }) => isShown));
});

export const PUT = endpoint(async ({ locals, params, request }) => {
	const input = await readJson(request, shownInput);
	try {
		return answer(await setShownLoads(locals.context, params['lake'] ?? '', input));
	} catch (cause) {
		if (!(cause instanceof LoadNotFound)) throw cause;
		const issues = [{ field: 'shown', message: cause.message }];
		throw new Problem(400, 'Bad Request', `The body cannot be used: ${cause.message}`, { issues });
	}
});

export const fallback = onlyMethods('GET', 'PUT');

function answer(loads: readonly LoadCase[]): Response {
	return json({ shown: loads.map(({ id }) => id) });
}
