import { isLately } from '#lib/model/broke-lately.ts';
import { daysBetween } from '#lib/model/calendar.ts';
import type { LakeDigest } from '#lib/server/services/digests/digest.ts';

/** What a lake needs somebody to look at, the weightiest first. */
export type Attention =
	| 'wentThrough'
	| 'withheld'
	| 'weatherOld'
	| 'flooding'
	| 'coldSnap'
	| 'doubtful'
	| 'notDrilled'
	| 'nothingStored';

/** Said before the weightiest caution. */
export const ATTENTION_WORDS: Record<Attention, string> = {
	wentThrough: 'The ice broke here',
	withheld: 'Stay off',
	weatherOld: 'Weather out of date',
	flooding: 'Flooding or slush',
	coldSnap: 'Sudden cold',
	doubtful: 'Something to check',
	notDrilled: 'Reading overdue',
	nothingStored: 'Nothing to go by'
};

/** A hole supports nothing any more after this: as for what is reached. */
const OVERDUE_d = 21;
/** A source that fails or a forecast that is too old is told with its remedy on the lake's page. */
const WEATHER_CODES = new Set([
	'weatherOld',
	'forecastOld',
	'sourceFails',
	'noPrecipitation',
	'elevationUnknown'
]);
const FLOOD_CODES = new Set(['slush', 'floodingNear']);
const COLD_CODES = new Set(['coldSnap']);
const DOUBT_CODES = new Set([
	'openedAgain',
	'doubtfulReading',
	'freezeUpNotSure',
	'snowUnknown',
	'sourcesDiffer',
	'weatherSlip',
	'forecastTooCold',
	'gaps'
]);

/**
 * Why a lake needs attention; `null` where it does not.
 *
 * Adverse facts go first, by how far they can lead somebody wrong: ice that has broken, a load that is
 * withheld, an answer that is not of today, water on the ice, sudden cold, a fact in doubt, a reading so
 * old that it supports nothing. A lake whose ice is gone needs none. Our rule, no source.
 */
export function attentionOf(digest: LakeDigest): Attention | null {
	const { iceOutOn, wentThroughOn, lastReadingOn, today, loads, cautions, status } = digest;
	if (iceOutOn !== null) return null;
	const has = (codes: ReadonlySet<string>) => cautions.some(({ code }) => codes.has(code));
	if (wentThroughOn !== null && isLately(wentThroughOn, today)) return 'wentThrough';
	if (loads.some((load) => load.status === 'withheld')) return 'withheld';
	if (has(WEATHER_CODES) || (status === 'ok' && digest.day === null)) return 'weatherOld';
	if (has(FLOOD_CODES)) return 'flooding';
	if (has(COLD_CODES)) return 'coldSnap';
	if (has(DOUBT_CODES)) return 'doubtful';
	if (lastReadingOn !== null && daysBetween(lastReadingOn, today) > OVERDUE_d) return 'notDrilled';
	return status === 'noWeather' ? 'nothingStored' : null;
}

/** Which cautions say what an attention is about. */
const SAID_BY: Partial<Record<Attention, ReadonlySet<string>>> = {
	wentThrough: new Set(['wentThrough']),
	withheld: new Set(['warmSpell', 'badCore', 'rotting']),
	weatherOld: WEATHER_CODES,
	flooding: FLOOD_CODES,
	coldSnap: COLD_CODES,
	doubtful: DOUBT_CODES
};

/** What a card says: why the lake needs attention, and before it what is weightier still; two at most. */
export function cardCautions(
	{ cautions }: Pick<LakeDigest, 'cautions'>,
	attention: Attention | null
): { why: string | null; other: string | null } {
	const codes = (attention && SAID_BY[attention]) ?? new Set<string>();
	const why = cautions.find(({ code }) => codes.has(code)) ?? null;
	const other = cautions.find((each) => each !== why) ?? null;
	return { why: why?.text ?? null, other: other?.text ?? null };
}

const ORDER = Object.keys(ATTENTION_WORDS);

/** By weight, then by the next date that matters, then by name. */
export function byAttention(a: Ordered, b: Ordered): number {
	return (
		rank(a.attention) - rank(b.attention) ||
		(a.next?.on ?? '9999').localeCompare(b.next?.on ?? '9999') ||
		a.name.localeCompare(b.name)
	);
}

/**
 * Which site of a lake stands for it: by weight, then the one whose ice may be thinnest, so that the
 * good news of a thicker one never stands for all of the lake; one that is not known last.
 */
export function bySite(a: OfSite, b: OfSite): number {
	return rank(a.attention) - rank(b.attention) || lower_m(a) - lower_m(b) || byAttention(a, b);
}

interface OfSite extends Ordered {
	day: { effectiveLower_m: number | null } | null;
}

/** Ice without a known bound counts as none; a site without a known day tells nothing at all. */
function lower_m({ day }: OfSite): number {
	return day === null ? Number.MAX_VALUE : (day.effectiveLower_m ?? 0);
}

interface Ordered {
	attention: Attention | null;
	next: { on: string } | null;
	name: string;
}

function rank(attention: Attention | null): number {
	return attention === null ? ORDER.length : ORDER.indexOf(attention);
}
