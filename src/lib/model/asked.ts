import { isColdSnap } from './cold-snap.ts';
import { floodsWithMoreSnow_m } from './more-snow.ts';
import type { SiteDay } from './site-day.ts';
import { siteEstimateSteps, type SiteEstimate, type SiteEstimateInput } from './site-estimate.ts';
import type { SiteSeason } from './site-season.ts';
import type { Steps } from './steps.ts';
import type { WarmDay } from './warm-day.ts';
import { warmSpells } from './warm-spell.ts';
import { METRIC_WORDS, type Words } from './words.ts';

/** A site and its day of asking, as every part of the answer needs them. */
export interface Asked {
	site: SiteSeason;
	estimate: SiteEstimate;
	today: SiteDay | null;
	spells: WarmDay[];
	warm: WarmDay | null;
	hasColdSnap: boolean;
	/** Readings set aside as not to be believed. */
	setAside: ReadonlySet<string>;
	floodsWith_m: number | null;
	words: Words;
}

/** Runs the estimate and the rules of the day over a site, in steps. */
export function* askSteps(
	site: SiteSeason,
	input: SiteEstimateInput & { words?: Words }
): Steps<Asked> {
	const { asOf, words = METRIC_WORDS } = input;
	const estimate = yield* siteEstimateSteps(site, input);
	const today = estimate.known.find(({ day }) => day.on === asOf) ?? null;
	const spells = warmSpells(site.days, site.readings, site.hasHours);
	const unbelieved = site.days.flatMap((day) => day.doubtfulReadings);
	return {
		site,
		estimate,
		today,
		spells,
		warm: spells.find(({ on }) => on === asOf) ?? null,
		hasColdSnap: today !== null && isColdSnap(asOf, today.day.column.snow_m, site.weatherOf),
		setAside: new Set([...unbelieved, ...estimate.tooThick]),
		floodsWith_m: today === null ? null : floodsWithMoreSnow_m(today.day.column),
		words
	};
}
