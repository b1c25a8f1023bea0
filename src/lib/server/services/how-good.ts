import { winterOf, type WinterId } from '#lib/model/calendar.ts';
import { hindcast } from '#lib/model/ensemble/hindcast.ts';
import { hindsight, type Hindsight, type PredictedReading } from '#lib/model/hindsight.ts';
import type { Context } from '../context.ts';
import { outlookInput } from './lake-view.ts';
import { getLake, type LakeRecord } from './lakes.ts';
import { nextTurn } from './next-turn.ts';
import { winterDaysOf } from './site-records.ts';
import { getSite, MAIN_SITE } from './sites.ts';

export interface HowGood {
	lake: LakeRecord;
	winter: WinterId | null;
	/** Winters with readings, newest first. */
	winters: WinterId[];
	/** The chosen winter's readings, each with what had been predicted before it. */
	readings: PredictedReading[];
	/** How far off it was in the chosen winter, and over `overWinters` winters. */
	ofWinter: Hindsight | null;
	ofAll: Hindsight | null;
	overWinters: number;
}

/** Each winter is run anew, so that older ones than these are left alone. */
const MOST_WINTERS = 6;

/** A winter's readings against what had been predicted before them. @throws LakeNotFound, SiteNotFound */
export async function howGood(
	ctx: Context,
	lakeId: string,
	{ winter: asked, site: askedSite = MAIN_SITE }: { winter?: WinterId; site?: string } = {}
): Promise<HowGood> {
	const lake = await getLake(ctx, lakeId);
	const site = await getSite(ctx, lakeId, askedSite);
	const taken = (await winterDaysOf(ctx, lakeId, site)).readingDays;
	const winters = [...new Set(taken.map(winterOf))].toSorted().toReversed();
	const winter = asked ?? winters[0] ?? null;
	const recent = winters.slice(0, MOST_WINTERS);
	const told = new Map<WinterId, PredictedReading[]>();
	for (const each of new Set([...(winter === null ? [] : [winter]), ...recent])) {
		told.set(each, hindcast(await outlookInput(ctx, lakeId, { winter: each, site: site.id })));
		await nextTurn();
	}
	const readings = winter === null ? [] : (told.get(winter) ?? []);
	const all = [...told.values()];
	return {
		lake,
		winter,
		winters,
		readings,
		ofWinter: hindsight(readings),
		ofAll: hindsight(all.flat()),
		overWinters: all.filter((each) => each.length > 0).length
	};
}
