import { daysBetween, type IsoDate } from '../calendar.ts';
import type { Words } from '../words.ts';
import { chanceText, headed, message, ofSite } from './closing.ts';
import type { TellingFacts } from './facts.ts';
import { loadMessage } from './load-message.ts';
import type { Message } from './message.ts';
import type { News } from './told.ts';

/** News in words. The lake's name is left to whoever sends it. */
export function newsMessage(news: News, facts: TellingFacts, words: Words): Message {
	const told = messageOf(news, facts, words);
	// The weather is the lake's.
	return news.kind === 'weatherStale' ? told : ofSite(told, facts.site);
}

function messageOf(news: News, facts: TellingFacts, words: Words): Message {
	switch (news.kind) {
		case 'thawAhead':
			return thawMessage(facts, words, news.before);
		case 'floodAhead':
			return floodMessage(facts, words, news.before);
		case 'readingOverdue':
			return overdueMessage(facts, words);
		case 'weatherStale':
			return staleMessage(facts, words);
		default:
			return loadMessage(news, facts, words);
	}
}

function thawMessage(
	{ spell, thaw, asOf }: TellingFacts,
	words: Words,
	before: IsoDate | null
): Message {
	const about = { kind: 'thawAhead' as const, loadId: null };
	if (spell) {
		const title = headed(`Warm spell since ${words.day(spell.since)}`);
		return { ...about, on: spell.since, title, text: message(spell.text) };
	}
	const from = thaw?.from ?? asOf;
	const day = words.day(from);
	const text = message(
		`By the weather known on ${words.day(asOf)} a warm spell is in force in the days from ${day} with a chance of ${chanceText(thaw?.chance ?? 0)}.`,
		wasTold(before, words),
		'Six hours above freezing double the thickness asked for; a day of them withholds every status: stay off then.',
		'Ice loses strength before it loses thickness.'
	);
	return { ...about, on: from, title: headed(`Thaw ahead from ${day}`), text };
}

function floodMessage(
	{ flood, asOf }: TellingFacts,
	words: Words,
	before: IsoDate | null
): Message {
	const from = flood?.from ?? asOf;
	const with_m = flood?.floodsWith_m ?? null;
	const text = message(
		`By the weather known on ${words.day(asOf)} snow floods the ice from ${words.day(from)}, as likely as not.`,
		wasTold(before, words),
		with_m === null ? null : `About ${words.depth(with_m)} more snow than today is enough.`,
		'Slush under snow is not seen from above, carries nothing, strands machines and keeps the frost from the ice.'
	);
	const title = headed(`Flood ahead from ${words.day(from)}`);
	return { kind: 'floodAhead', loadId: null, on: from, title, text };
}

function overdueMessage({ lastHoleOn, today, readingDueOn }: TellingFacts, words: Words): Message {
	const last =
		lastHoleOn === null
			? 'No hole is on record this winter.'
			: `The last hole on record is of ${words.day(lastHoleOn)}, ${daysBetween(lastHoleOn, today)} days ago.`;
	const text = message(
		last,
		'What is estimated since rests on the weather alone, and old holes support nothing.',
		'This asks nobody onto the ice: whoever drills tests from the shore on, step by step.'
	);
	const title = headed('Reading overdue');
	return { kind: 'readingOverdue', loadId: null, on: readingDueOn, title, text };
}

function staleMessage({ stale, today }: TellingFacts, words: Words): Message {
	const since = stale?.since ?? today;
	const text = message(
		`The last observed temperature is of ${words.day(since)}, ${stale?.age_h ?? 0} hours old.`,
		'What has happened since is not known here: dates told before may be wrong, and no thaw would be told.',
		'See the log of the weather, or bring in a file.'
	);
	const title = headed(`Weather stale since ${words.day(since)}`);
	return { kind: 'weatherStale', loadId: null, on: since, title, text };
}

function wasTold(before: IsoDate | null, words: Words): string | null {
	return before === null ? null : `Before, ${words.day(before)} was told.`;
}
