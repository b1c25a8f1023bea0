import type { Context } from '#lib/server/context.ts';
import { startRefresh } from '#lib/server/services/refresh/refresh-lake.ts';
import {
	CSV,
	getLakeOrder,
	lakeOrderInput,
	setLakeOrder,
	type LakeOrigin
} from '#lib/server/services/sources/lake-order.ts';

/** Lets a lake use a source, trusted least, and asks it at once. @throws LakeNotFound, SourceNotFound */
export async function addToLake(
	context: Context,
	lakeId: string,
	added: { source: string; station: string | null }
): Promise<void> {
	const order = (await getLakeOrder(context, lakeId)).map(asUse);
	const others = order.filter(({ source }) => source !== added.source);
	await setLakeOrder(context, lakeId, lakeOrderInput.parse({ order: [...others, added] }));
	await startRefresh(context, lakeId);
}

/** An origin as the order of trust takes it. */
export function asUse(origin: LakeOrigin) {
	if (origin.kind === 'csv') return { source: CSV };
	const { source, correctsElevation, station } = origin;
	return { source, correctsElevation, station };
}
