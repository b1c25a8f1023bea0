import { isColdSnap } from './cold-snap.ts';
import { floodsWithMoreSnow_m } from './more-snow.ts';
import { hasBrokenSince, isOffOpenPart } from './open-part.ts';
import type { Reading } from './reading.ts';
import { coldSince } from './since/cold-since.ts';
import { openSince } from './since/open-since.ts';
import type { Since } from './since/since.ts';
import { thinSince } from './since/thin-since.ts';
import { warmSince } from './since/warm-since.ts';
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
	/** The readings as the rules on warm spells hear them: one that may not speak for the site as hearsay. */
	heard: Reading[];
	/** Of each day to the day of asking. */
	spells: WarmDay[];
	/** By all that has been observed. */
	warm: WarmDay | null;
	hasColdSnap: boolean;
	/** What was seen after the day of asking; `null` for a view of the past. */
	since: Since | null;
	/** Readings set aside as not to be believed. */
	setAside: ReadonlySet<string>;
	floodsWith_m: number | null;
	words: Words;
}

export interface AskedInput extends SiteEstimateInput {
	since?: Since | null;
	/** How numbers enter the texts; metric without. */
	words?: Words;
}

/** Runs the estimate and the rules of the day over a site, in steps. */
export function* askSteps(site: SiteSeason, input: AskedInput): Steps<Asked> {
	const { asOf, words = METRIC_WORDS, since = null } = input;
	const told = yield* siteEstimateSteps(site, input);
	const estimate = since === null ? told : openSince(thinSince(told, asOf, since), since);
	const today = estimate.known.find(({ day }) => day.on === asOf) ?? null;
	const unbelieved = site.days.flatMap((day) => day.doubtfulReadings);
	const setAside = new Set([...unbelieved, ...estimate.tooThick]);
	const heard = heardOf(site, input, setAside);
	const spells = warmSpells(site.days, heard, site.hasHours);
	return {
		site,
		estimate,
		today,
		heard,
		spells,
		warm: warmOf(site, spells, asOf, since),
		hasColdSnap: today !== null && hasColdSnap(site, today, since),
		since,
		setAside,
		floodsWith_m: today === null ? null : floodsWithMoreSnow_m(today.day.column),
		words
	};
}

/** What no status may rest on ends no spell either; a bad core holds back whoever saw it, and wherever. */
function heardOf(
	{ readings }: SiteSeason,
	{ asOf, since, weakSpots }: AskedInput,
	setAside: ReadonlySet<string>
): Reading[] {
	const known = [...readings, ...(since?.readings ?? [])];
	const speaks = (reading: Reading): boolean =>
		!isOffOpenPart(reading, weakSpots) &&
		!setAside.has(reading.id) &&
		!hasBrokenSince(reading, known, since?.now ?? asOf);
	return readings.map((reading) => (speaks(reading) ? reading : { ...reading, secondHand: true }));
}

function warmOf(
	site: SiteSeason,
	spells: readonly WarmDay[],
	asOf: string,
	since: Since | null
): WarmDay | null {
	const warm = spells.find(({ on }) => on === asOf) ?? null;
	if (since === null) return warm;
	const day = site.days.find(({ on }) => on === asOf) ?? null;
	return warmSince(warm, day, since, site.hasHours);
}

function hasColdSnap({ weatherOf }: SiteSeason, { day }: SiteDay, since: Since | null): boolean {
	const { snow_m } = day.column;
	if (isColdSnap(day.on, snow_m, weatherOf)) return true;
	return since !== null && coldSince(snow_m, since, weatherOf);
}
