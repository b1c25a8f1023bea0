import { winterSpan, type WinterId } from '#lib/model/calendar.ts';
import { trackWinter, type TrackRecord } from '#lib/model/tracks/track-winter.ts';
import type { Context } from '../context.ts';
import { listReadingRows } from '../storage/readings.ts';
import { listRecordedWinters, readSiteWinter } from '../storage/winters.ts';
import type { SiteRecord } from './sites.ts';

/**
 * A site's winter as its ice went through it: a track's begins with that of the site it was made on.
 * What the people recorded of the site itself is `getSiteWinter` and `listReadings`.
 */
export async function siteWinterOf(
	ctx: Context,
	lakeId: string,
	{ id, parent }: Pick<SiteRecord, 'id' | 'parent'>,
	winter: WinterId
): Promise<TrackRecord> {
	const own = await recordOf(ctx, lakeId, id, winter);
	if (parent === null) return { ...own, fromParent: [], workedOn: [] };
	return trackWinter(await recordOf(ctx, lakeId, parent, winter), own);
}

async function recordOf({ db }: Context, lakeId: string, site: string, winter: WinterId) {
	const [from, to] = winterSpan(winter);
	return {
		record: await readSiteWinter(db, { lakeId, site }, winter),
		readings: await listReadingRows(db, { lakeId, site, from, to })
	};
}

/** Winters that anything but weather is known of: a track has those of its parent too. */
export async function winterDaysOf(
	{ db }: Context,
	lakeId: string,
	{ id, parent }: Pick<SiteRecord, 'id' | 'parent'>
): Promise<{ winters: WinterId[]; readingDays: string[] }> {
	const winters: WinterId[] = [];
	const readingDays: string[] = [];
	for (const site of [id, ...(parent === null ? [] : [parent])]) {
		winters.push(...(await listRecordedWinters(db, { lakeId, site })));
		readingDays.push(...(await listReadingRows(db, { lakeId, site })).map(({ on }) => on));
	}
	return { winters, readingDays };
}
