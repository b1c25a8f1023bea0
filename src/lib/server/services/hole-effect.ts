import { winterOf } from '#lib/model/calendar.ts';
import type { Outlook, OutlookInput } from '#lib/model/outlook.ts';
import type { Reading } from '#lib/model/reading.ts';
import { iceOn, type ReadingsEffect } from '#lib/model/readings-effect.ts';
import type { Words } from '#lib/model/words.ts';
import type { Context } from '../context.ts';
import { outlookInput } from './lake-view.ts';
import { outlookOf } from './outlooks.ts';
import { getReading } from './readings.ts';

/** What the last hole of a reading changed, of the day it was drilled and now. */
export interface HoleEffect extends ReadingsEffect {
	reading: Reading;
}

/** The site with and without the last hole of a reading. @throws LakeNotFound, SiteNotFound, ReadingNotFound */
export async function holeEffect(
	ctx: Context,
	lakeId: string,
	site: string,
	readingId: string,
	words: Words
): Promise<HoleEffect> {
	const reading = await getReading(ctx, lakeId, readingId);
	const { on } = reading;
	const then = await outlookInput(ctx, lakeId, { site, winter: winterOf(on), asOf: on, words });
	const now = await outlookInput(ctx, lakeId, { site, words });
	const [after, before] = await bothWays(then, reading);
	const [stands, stood] = await bothWays(now, reading);
	const ice = { before: iceOn(before, on), after: iceOn(after, on) };
	return {
		reading,
		ice: ice.before && ice.after ? { before: ice.before, after: ice.after } : null,
		loads: (stands?.forecast.loads ?? []).map(({ id, name, status, reason }) => ({
			id,
			name,
			before: stood?.forecast.loads.find((load) => load.id === id)?.status ?? status,
			after: status,
			reason
		})),
		isAhead: on > now.asOf,
		asOf: now.asOf
	};
}

async function bothWays(
	input: OutlookInput,
	reading: Reading
): Promise<[after: Outlook | null, before: Outlook | null]> {
	const { since } = input;
	const without = {
		...input,
		readings: lessLastHole(input.readings, reading.id),
		...(since ? { since: { ...since, readings: lessLastHole(since.readings, reading.id) } } : {})
	};
	return [await outlookOf(input), await outlookOf(without)];
}

/** A reading of one hole goes as a whole. */
function lessLastHole(readings: readonly Reading[], id: string): Reading[] {
	return readings.flatMap((reading) => {
		if (reading.id !== id) return [reading];
		const holes = reading.holes.slice(0, -1);
		return holes.length > 0 ? [{ ...reading, holes }] : [];
	});
}
