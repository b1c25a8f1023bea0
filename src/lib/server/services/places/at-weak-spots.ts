import { placeKey } from '#lib/model/places/place-name.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { Context } from '../../context.ts';
import { listWeakSpotRows } from '../../storage/weak-spots.ts';

/** Holes at a weak spot tell of it alone: no status of the open part rests on them, nor on others. */
export async function atWeakSpots(
	{ db }: Context,
	lakeId: string,
	readings: readonly Reading[],
	others: readonly string[]
): Promise<string[]> {
	const spots = await listWeakSpotRows(db, lakeId);
	const names = new Set(spots.map(({ name }) => placeKey(name)));
	const own = readings.filter(({ place }) => names.has(placeKey(place)));
	return [...others, ...own.map(({ id }) => id)];
}
