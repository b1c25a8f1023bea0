import { json } from '@sveltejs/kit';
import {
	getLakeOrder,
	lakeOrderInput,
	setLakeOrder
} from '#lib/server/services/sources/lake-order.ts';
import { readJson } from '../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';

export const GET = endpoint(async ({ locals, params }) =>
	json({ order: await getLakeOrder(locals.context, params['lake'] ?? '') })
);

export const PUT = endpoint(async ({ locals, params, request }) => {
	const input = await readJson(request, lakeOrderInput);
	return json({ order: await setLakeOrder(locals.context, params['lake'] ?? '', input) });
});

export const fallback = onlyMethods('GET', 'PUT');
