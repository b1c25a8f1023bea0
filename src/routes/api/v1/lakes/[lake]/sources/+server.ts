import type { RequestEvent } from '@sveltejs/kit';
import {
	getLakeOrder,
	lakeOrderInput,
	setLakeOrder,
	type LakeOrigin
} from '#lib/server/services/sources/lake-order.ts';
import { readJson } from '../../../../body.ts';
import { endpoint, onlyMethods } from '../../../../endpoint.ts';
import { changed, told, type Kept } from '../../../../if-match.ts';

export const GET = endpoint((event) => told(kept(event)));

export const PUT = endpoint(async (event) => {
	const input = await readJson(event.request, lakeOrderInput);
	const { lake = '' } = event.params;
	return changed(event, kept(event), async () => ({
		order: await setLakeOrder(event.locals.context, lake, input)
	}));
});

export const fallback = onlyMethods('GET', 'PUT');

/** What its sources have brought meanwhile is no change of their order. */
function kept({ locals, params }: RequestEvent): Kept<{ order: LakeOrigin[] }> {
	const { lake = '' } = params;
	return {
		line: lake,
		stands: async () => ({ order: await getLakeOrder(locals.context, lake) }),
		version: ({ order }) =>
			order.map((origin) =>
				origin.kind === 'csv'
					? origin.kind
					: [origin.source, origin.correctsElevation, origin.station]
			)
	};
}
