import { total_m } from './column.ts';
import type { SiteMemory } from './ensemble/memory.ts';
import { bendParameters, takeParameters } from './ensemble/traits.ts';
import type { LakeFacts } from './lake.ts';
import { parametersFor, type Parameters } from './parameters.ts';
import { runSeason } from './season.ts';
import type { SiteSeason } from './site-season.ts';
import { counted } from './words.ts';

/** Thinner ice than this tells nothing of how a lake grows it. */
const TELLING_m = 0.08;
/** Less is no difference worth telling. Our choice. */
const NOTABLE = 0.05;

/**
 * What past winters taught of a site, in a sentence; `null` without any, or before there is ice.
 *
 * The thickest of this winter's known days by the lake's own parameters and by those that the memory's
 * mean bends them to, no reading taken in.
 */
export function memoryText(
	site: SiteSeason,
	input: { lake: LakeFacts; memory?: SiteMemory | null; parameters?: Parameters }
): string | null {
	const { lake, memory } = input;
	if (!memory) return null;
	const base = input.parameters ?? parametersFor(lake);
	const usual_m = thickest_m(site, lake, base);
	if (usual_m < TELLING_m) return null;
	const ratio = thickest_m(site, lake, remembered(base, memory)) / usual_m;
	return `${counted(memory.winters, 'past winter')} with ${counted(memory.readings, 'reading')}: ${asWords(ratio)}`;
}

function asWords(ratio: number): string {
	if (Math.abs(ratio - 1) < NOTABLE)
		return 'this lake grows about as fast as others of its size and shelter.';
	const share = `${Math.round(100 * Math.abs(ratio - 1))} %`;
	return ratio < 1
		? `this lake grows slower than others of its size and shelter, by about ${share} this winter.`
		: `this lake grows faster than others of its size and shelter, by about ${share} this winter.`;
}

function remembered(base: Parameters, { mean }: SiteMemory): Parameters {
	const site = mean.map((z) => Float64Array.of(z));
	const bent = { ...base };
	takeParameters(
		bendParameters(base, { site, winter: site.map(() => Float64Array.of(0)) }),
		0,
		bent
	);
	return bent;
}

function thickest_m(site: SiteSeason, lake: LakeFacts, parameters: Parameters): number {
	const { freezeUp, weather, events, days } = site;
	const season = runSeason({
		lake,
		freezeUpOn: freezeUp.middle,
		until: days.at(-1)?.on ?? freezeUp.middle,
		weather,
		events,
		parameters
	});
	return Math.max(0, ...season.map(({ column }) => total_m(column)));
}
