import { winterSpan, type WinterId } from '#lib/model/calendar.ts';
import type { EarlyIce, EarlyIceInput } from '#lib/model/early/early-ice.ts';
import type { Caution } from '#lib/model/forecast.ts';
import type { SiteWinter } from '#lib/model/site-winter.ts';
import type { Context } from '../context.ts';
import { ContentCache } from './content-cache.ts';
import { estimate } from './estimates/estimate.ts';
import { DayOutsideWinter } from './forecast.ts';
import { viewWithInput, type LakeView, type ViewOptions } from './lake-view.ts';
import { siteWinterOf } from './site-records.ts';
import { getSite } from './sites.ts';
import { WhileUnchanged } from './while-unchanged.ts';
import { wordsSample } from './words-sample.ts';

/** Answers that are kept; each is some dozen kilobytes. */
const KEPT = 100;
/** Earlier winters that are looked at for their freeze-up. */
const WINTERS = 30;

const kept = new ContentCache<Promise<EarlyIce>>(KEPT);
const unchanged = new WhileUnchanged<EarlyIceView>(KEPT);

export interface EarlyIceView {
	view: LakeView;
	early: EarlyIce;
}

/** A site's early season, beside the view that it belongs to. @throws LakeNotFound, SiteNotFound */
export async function earlyIce(
	ctx: Context,
	lakeId: string,
	options: ViewOptions
): Promise<EarlyIceView> {
	const { words, ...asked } = options;
	const key = JSON.stringify([lakeId, asked, words && wordsSample(words)]);
	const kept = await unchanged.look(ctx, lakeId, key);
	if (kept.value !== null) return kept.value;
	const { view, input } = await viewWithInput(ctx, lakeId, { ...options, toWinterEnd: true });
	const records = await earlierRecords(ctx, view);
	const answer = { view, early: await run({ input, outlook: view.outlook, records }) };
	kept.keep(answer);
	return answer;
}

/** Always said beside it, for a number of a whole site is read as one of the next step. */
const VARIES: Caution = {
	code: 'variesMost',
	text: 'Early ice varies most from place to place: two feet and one inch have been found a few yards apart (Minnesota DNR, as reported).'
};

/** The answer of `GET /api/v1/lakes/{lake}/early-ice`. */
export interface EarlyIceAnswer extends EarlyIce {
	lake: string;
	site: string;
	winter: WinterId;
	cautions: Caution[];
}

/** The same without the view. @throws LakeNotFound, SiteNotFound, DayOutsideWinter */
export async function earlyIceAnswer(
	ctx: Context,
	lakeId: string,
	options: ViewOptions
): Promise<EarlyIceAnswer> {
	const { view, early } = await earlyIce(ctx, lakeId, options);
	const { site, winter, asOf, outlook, upkeep } = view;
	const [first, last] = winterSpan(winter);
	if (asOf < first || asOf > last) throw new DayOutsideWinter('asOf', asOf, first, last);
	const cautions = [VARIES, ...upkeep.sentences, ...(outlook?.forecast.cautions ?? [])];
	return { lake: lakeId, site, winter, ...early, cautions };
}

async function earlierRecords(ctx: Context, view: LakeView): Promise<SiteWinter[]> {
	const earlier = view.winters.filter((winter) => winter < view.winter).slice(0, WINTERS);
	const site = await getSite(ctx, view.lake.id, view.site);
	const records: SiteWinter[] = [];
	for (const winter of earlier) {
		const { record } = await siteWinterOf(ctx, view.lake.id, site, winter);
		records.push(record);
	}
	return records.filter(({ freezeUpOn }) => freezeUpOn !== null);
}

/** The outlook follows from the input, and so need not be told apart. */
function run(content: EarlyIceInput): Promise<EarlyIce> {
	const { outlook, ...others } = content;
	const key = [others, outlook === null];
	return kept.get(key, () => {
		const made = estimate({ kind: 'earlyIce', content });
		made.catch(() => kept.forget(key));
		return made;
	});
}
