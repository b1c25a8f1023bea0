import { createHash } from 'node:crypto';
import { winterOf, type IsoDate } from '#lib/model/calendar.ts';
import { gatherFacts, unestimatedFacts } from '#lib/model/telling/gather.ts';
import type { TellingFacts } from '#lib/model/telling/facts.ts';
import { wordsFor } from '#lib/model/words.ts';
import type { Context } from '../../context.ts';
import { listReadingsLoggedSince } from '../../storage/readings.ts';
import { findTelling, type TellingRow } from '../../storage/telling.ts';
import { quietView, type LakeView, type QuietView } from '../lake-view.ts';
import { comingOff } from '../coming-off.ts';
import { getLake, type LakeRecord } from '../lakes.ts';
import { localDay } from '../local-day.ts';
import { getRemoval } from '../removal.ts';
import { tell, type LookedSite } from './tell.ts';
import { toldSites, type ToldSite } from './told-name.ts';
import { chosenLoads } from './settings.ts';

/** Ages of the weather change by themselves, so that the whole is looked at so often at least. */
const LOOK_AGAIN_H = 3;

/**
 * Looks at a lake's sites that are told of and tells what is new; true when it looked at the whole.
 * Where nothing has changed since it last looked, no estimate is made. Two looks at once tell nothing twice.
 * @throws LakeNotFound
 */
export async function lookAt(ctx: Context, lakeId: string): Promise<boolean> {
	const row = await findTelling(ctx.db, lakeId);
	if (!row || row.since_at === null) return false;
	const lake = await getLake(ctx, lakeId);
	const today = lake.today ?? localDay(ctx.now(), lake.timeZone);
	const words = wordsFor(row);
	const sites = await toldSites(ctx, lakeId, row);
	const quiet: QuietView[] = [];
	for (const { id } of sites) {
		quiet.push(await quietView(ctx, lakeId, { site: id, toWinterEnd: true, words }));
	}
	const removal = await getRemoval(ctx, lakeId, winterOf(today));
	// Of other sites, too: they are told of though no estimate has them.
	const logged = await listReadingsLoggedSince(ctx.db, lakeId, row.since_at);
	const inputs = quiet.map(({ input }) => input);
	const lookedOf = digest([inputs, removal, logged], lake, sites, row);
	if (row.looked_of === lookedOf && row.looked_on === today && isLately(ctx, row)) return false;
	const looked: LookedSite[] = [];
	for (const [at, site] of sites.entries()) {
		const view = await quiet[at]?.make();
		if (view) looked.push(await lookedSite(ctx, view, row, { site, before: looked }));
	}
	const look = { looked_at: ctx.now().toISOString(), looked_of: lookedOf, looked_on: today };
	await tell(ctx, lake, { sites: looked, look });
	return true;
}

function isLately(ctx: Context, { looked_at }: TellingRow): boolean {
	if (looked_at === null) return false;
	const ago_ms = ctx.now().getTime() - Date.parse(looked_at);
	// What was looked at later than now was by a clock that was ahead.
	return ago_ms >= 0 && ago_ms < LOOK_AGAIN_H * 3_600_000;
}

/** Of all that the answer is made from; its weather, readings and loads are in the input. */
function digest(
	input: unknown,
	{ name }: LakeRecord,
	sites: readonly ToldSite[],
	row: TellingRow
): string {
	const { loads, reading_after_d, since_at, measure, mass } = row;
	const content = [input, name, sites, loads, reading_after_d, since_at, measure, mass];
	return createHash('sha256').update(JSON.stringify(content)).digest('base64');
}

async function lookedSite(
	ctx: Context,
	view: LakeView,
	row: TellingRow,
	{ site, before }: { site: ToldSite; before: readonly LookedSite[] }
): Promise<LookedSite> {
	const facts = await factsOf(ctx, view, row, site.name);
	const isEstimated = view.outlook !== null;
	if (facts === null) return { site: site.id, facts, isEstimated };
	// What is of the whole lake is told once: with the first site of which anything is told.
	const removalOn = before.every((each) => each.facts === null) ? facts.removalOn : null;
	const stale = before.every((each) => !each.isEstimated) ? facts.stale : null;
	return { site: site.id, facts: { ...facts, stale, removalOn }, isEstimated };
}

/** `null` where the winter that it is has nothing on record yet. */
async function factsOf(
	ctx: Context,
	view: LakeView,
	row: TellingRow,
	site: string | null
): Promise<TellingFacts | null> {
	const { outlook, winter, today, readings, lake } = view;
	if (winter !== winterOf(today)) return null;
	const chosen = chosenLoads(row, view.loads);
	if (outlook === null) {
		const { removalOn } = await getRemoval(ctx, lake.id, winter);
		const loads = view.loads.filter(({ id }) => chosen.includes(id));
		return unestimatedFacts({ site, today, winter, loads, removalOn });
	}
	const off = await comingOff(ctx, view);
	const { removalOn } = off ?? (await getRemoval(ctx, lake.id, winter));
	return gatherFacts({
		site,
		outlook,
		today,
		readings,
		loads: chosen,
		readingAfter_d: row.reading_after_d,
		observed: observedOf(view),
		removalOn,
		offBy: new Map(off?.loads.map(({ id, offBy }) => [id, offBy.on]))
	});
}

/** By the day that its hour lies in, which ends with the next. */
function observedOf({ upkeep, lake }: LakeView): { on: IsoDate; age_h: number } | null {
	const { lastObservedAt, lastObservedAge_h } = upkeep;
	if (lastObservedAt === null || lastObservedAge_h === null) return null;
	const within = new Date(lastObservedAt.getTime() - 1);
	return { on: localDay(within, lake.timeZone), age_h: lastObservedAge_h };
}
