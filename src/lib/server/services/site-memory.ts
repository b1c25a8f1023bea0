import { winterSpan, type WinterId } from '#lib/model/calendar.ts';
import {
	evidenceOf,
	learn,
	type Evidence,
	type PastWinter,
	type SiteMemory
} from '#lib/model/ensemble/memory.ts';
import type { LakeFacts } from '#lib/model/lake.ts';
import type { Context } from '../context.ts';
import { readWeatherDays } from '../storage/weather-days.ts';
import { ContentCache } from './content-cache.ts';
import { nextTurn } from './next-turn.ts';
import { siteWinterOf } from './site-records.ts';
import type { SiteRecord } from './sites.ts';

/** Older winters than these teach nothing more. */
const WINTERS = 10;
/** Winters whose evidence is kept; each is some dozen kilobytes. */
const KEPT = 200;

const kept = new ContentCache<Evidence[]>(KEPT);

/** What the winters before one taught of a site; `null` without any that has readings and weather. */
export async function siteMemory(
	ctx: Context,
	lakeId: string,
	site: Pick<SiteRecord, 'id' | 'parent'>,
	lake: LakeFacts,
	earlier: readonly WinterId[]
): Promise<SiteMemory | null> {
	const evidence: Evidence[][] = [];
	for (const winter of earlier.toSorted().toReversed()) {
		if (evidence.length === WINTERS) break;
		const past = await pastWinter(ctx, lakeId, site, winter);
		if (past === null) continue;
		const own = await evidenceFrom(past, lake);
		if (own.length > 0) evidence.push(own);
	}
	return learn(evidence.toReversed().flat(), evidence.length);
}

async function pastWinter(
	ctx: Context,
	lakeId: string,
	site: Pick<SiteRecord, 'id' | 'parent'>,
	winter: WinterId
): Promise<PastWinter | null> {
	const [, to] = winterSpan(winter);
	const { record, readings } = await siteWinterOf(ctx, lakeId, site, winter);
	if (readings.length === 0) return null;
	const { freezeUpOn, freezeUpBy, events } = record;
	if (freezeUpOn === null) return null;
	const weather = await readWeatherDays(ctx.db, lakeId, freezeUpOn, to);
	return weather.length > 0 ? { freezeUpOn, freezeUpBy, weather, events, readings } : null;
}

/** Made once for the same winter of the same lake; the server answers others in between. */
async function evidenceFrom(past: PastWinter, lake: LakeFacts): Promise<Evidence[]> {
	const { latitude, longitude, elevation_m, area_km2, meanDepth_m, water } = lake;
	const facts = { latitude, longitude, elevation_m, area_km2, meanDepth_m, water };
	let isNew = false;
	const evidence = kept.get([facts, past], () => {
		isNew = true;
		return evidenceOf(past, facts);
	});
	if (isNew) await nextTurn();
	return evidence;
}
