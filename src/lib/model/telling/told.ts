import type { IsoDate, WinterId } from '../calendar.ts';
import { conditionNews, type ToldCondition } from './condition.ts';
import type { TellingFacts } from './facts.ts';
import { loadNews, type LoadNews, type ToldLoad } from './told-load.ts';

/** What was told of a lake, kept so that nothing is told twice. Plain data: it is stored as JSON. */
export interface Told {
	version: 1;
	winter: WinterId;
	thaw: ToldCondition | null;
	flood: ToldCondition | null;
	reading: ToldCondition | null;
	stale: ToldCondition | null;
	loads: Record<string, ToldLoad>;
}

export type News =
	| LoadNews
	| {
			kind: 'thawAhead' | 'floodAhead' | 'readingOverdue' | 'weatherStale';
			/** The day that it was told to begin before; `null` when it is new. */
			before: IsoDate | null;
	  };

/** Nothing has been told of a winter yet. */
export function nothingTold(winter: WinterId): Told {
	return { version: 1, winter, thaw: null, flood: null, reading: null, stale: null, loads: {} };
}

/**
 * What is to be told, from what was told before and what is known today; and what counts as told then.
 *
 * The rules are those of {@link conditionNews} and {@link loadNews}. Of a new winter nothing has been
 * told. A load without an estimate is left as it was told: not known is not gone.
 */
export function newsOf(before: Told | null, facts: TellingFacts): { told: Told; news: News[] } {
	const start = before?.winter === facts.winter ? before : nothingTold(facts.winter);
	const { today } = facts;
	const news: News[] = [];
	const condition = (
		kind: 'thawAhead' | 'floodAhead' | 'readingOverdue' | 'weatherStale',
		told: ToldCondition | null,
		from: IsoDate | null
	): ToldCondition | null => {
		const result = conditionNews(told, from, today);
		if (result.isNews) news.push({ kind, before: result.before });
		return result.told;
	};
	const thaw = condition('thawAhead', start.thaw, thawFrom(facts));
	const flood = condition('floodAhead', start.flood, facts.flood?.from ?? null);
	const stale = condition('weatherStale', start.stale, facts.stale?.since ?? null);
	const reading = condition('readingOverdue', start.reading, overdueSince(facts));
	const loads = { ...start.loads };
	for (const load of facts.loads) {
		const each = loadNews(loads[load.id] ?? null, load, today);
		loads[load.id] = each.told;
		news.push(...each.news);
	}
	return { told: { ...start, thaw, flood, stale, reading, loads }, news };
}

/** A spell that is there counts as the same as the one that was ahead. */
function thawFrom({ spell, thaw }: TellingFacts): IsoDate | null {
	return spell?.since ?? thaw?.from ?? null;
}

function overdueSince({ readingDueOn, today }: TellingFacts): IsoDate | null {
	return readingDueOn !== null && readingDueOn < today ? readingDueOn : null;
}
