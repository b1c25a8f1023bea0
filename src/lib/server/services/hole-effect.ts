import { winterOf, type IsoDate } from '#lib/model/calendar.ts';
import type { LoadStatus } from '#lib/model/forecast.ts';
import type { Outlook, OutlookInput } from '#lib/model/outlook.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { Words } from '#lib/model/words.ts';
import type { Context } from '../context.ts';
import { outlookInput } from './lake-view.ts';
import { outlookOf } from './outlooks.ts';
import { getReading } from './readings.ts';

/** The ice of one day, as a hole at a random spot would show it. */
export interface IceThen {
	p05_m: number;
	p50_m: number;
	p95_m: number;
	/** Lower bound to go by. */
	bound_m: number;
}

/** What the last hole of a reading changed. */
export interface HoleEffect {
	reading: Reading;
	/** Of the day it was drilled, without it and with it; `null` where that is not estimated. */
	ice: { before: IceThen; after: IceThen } | null;
	/** Where each load stands now. */
	loads: { id: string; name: string; before: LoadStatus; after: LoadStatus; reason: string }[];
	/** The weather of its day is not in: until then it counts against the ice, not for it. */
	isAhead: boolean;
	/** Last day that is estimated now. */
	asOf: IsoDate;
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

function iceOn(outlook: Outlook | null, on: IsoDate): IceThen | null {
	const day = outlook?.forecast.days.find((each) => each.on === on);
	if (!day || day.bound === null) return null;
	const { p05, p50, p95 } = day.total_m;
	if (p05 === null || p50 === null || p95 === null) return null;
	return { p05_m: p05, p50_m: p50, p95_m: p95, bound_m: day.bound.total_m };
}
