import type { IsoDate } from '../calendar.ts';
import type { Words } from '../words.ts';
import { headed, message, ofSite } from './closing.ts';
import type { TellingFacts } from './facts.ts';
import { chancesText, END_RULES, OFF_BY, OPEN_PART } from './load-message.ts';
import { STATUS_NAMES } from './status-names.ts';

/** A day, or days in a row, that matter: one entry of a calendar. */
export interface TellingDate {
	/** The same for the same matter as long as the winter lasts. */
	key: string;
	from: IsoDate;
	/** Included. */
	to: IsoDate;
	title: string;
	text: string;
}

/** The days of a lake's winter that matter, as they are known today. */
export function tellingDates(facts: TellingFacts, words: Words): TellingDate[] {
	const ofIce = [
		...facts.loads.flatMap((load) => loadDates(load, facts, words)),
		...iceOut(facts, words),
		...readingDue(facts, words)
	];
	return [
		...ofIce.map((date) => ofSite(date, facts.site)),
		...removal(facts, words),
		...stale(facts, words)
	];
}

function loadDates(
	load: TellingFacts['loads'][number],
	{ winter, today }: TellingFacts,
	words: Words
): TellingDate[] {
	const { id, name, status, expectedFrom, likelyFrom, until, offBy } = load;
	const key = (what: string) => `${winter}/${what}/${id}`;
	const sentence = chancesText(load, words);
	const chances = `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}`;
	// That its holes count is true for days only, and a calendar is kept for longer.
	const stands =
		status === 'reached' ? null : `Its status, as last known: ${STATUS_NAMES[status]}.`;
	const from = message(stands, chances, OPEN_PART);
	const end = message(stands, chances, 'A warm spell closes the ice sooner.', END_RULES);
	const off = message(`${name} has to be off by then: ${OFF_BY}`, END_RULES);
	const removed = oneDay(key('off'), offBy, `${name}, off the ice by this day`, off);
	// Beside stay off a day on which it is thick enough would sound like leave.
	if (status === 'withheld' && expectedFrom !== null && expectedFrom <= today) return removed;
	return [
		...oneDay(key('expected'), expectedFrom, `${name}, expected from here (1 in 2)`, from),
		...oneDay(key('likely'), likelyFrom, `${name}, likely from here (9 in 10)`, from),
		...oneDay(key('until'), until, `${name}, expected until here (1 in 2)`, end),
		...removed
	];
}

function iceOut({ iceOut: window, winter }: TellingFacts, words: Words): TellingDate[] {
	if (!window || window.p10 === null) return [];
	const { p10, p50, p90 } = window;
	const isOver = p10 === p90;
	const text = isOver
		? message(`Ice-out is on record for ${words.day(p10)}.`)
		: message(
				`It has opened by ${words.day(p10)} in one case of ten, ${p50 === null ? 'by the end of what is told in less than half of them' : `by ${words.day(p50)} in half of them`}, ${p90 === null ? 'and may last past what is told' : `by ${words.day(p90)} in nine of ten`}.`,
				'The ice bears nothing long before it opens.'
			);
	const title = headed(isOver ? 'Ice-out' : 'Ice-out window');
	return [{ key: `${winter}/iceOut`, from: p10, to: p90 ?? p50 ?? p10, title, text }];
}

function removal({ removalOn, winter }: TellingFacts, words: Words): TellingDate[] {
	const text = message(
		`The local removal date is ${words.day(removalOn ?? '')}, as it was typed here: look it up with the authority.`,
		'The ice may ask for an earlier one.',
		END_RULES
	);
	return oneDay(`${winter}/removal`, removalOn, 'Local removal date, everything off', text);
}

function readingDue(
	{ readingDueOn, lastHoleOn, winter }: TellingFacts,
	words: Words
): TellingDate[] {
	const last =
		lastHoleOn === null
			? 'No hole is on record this winter.'
			: `The last hole on record is of ${words.day(lastHoleOn)}.`;
	const text = message(
		last,
		'This asks nobody onto the ice: whoever drills tests from the shore on, step by step.'
	);
	return oneDay(`${winter}/reading`, readingDueOn, 'Reading due', text);
}

/** On today, so that it is seen: the other days are as old as the weather. */
function stale({ stale: old, today, winter }: TellingFacts, words: Words): TellingDate[] {
	if (!old) return [];
	const text = message(
		`The last observed temperature is of ${words.day(old.since)}: the other days told here may be wrong.`
	);
	return oneDay(`${winter}/stale`, today, `Weather stale since ${words.day(old.since)}`, text);
}

function oneDay(key: string, on: IsoDate | null, title: string, text: string): TellingDate[] {
	return on === null ? [] : [{ key, from: on, to: on, title: headed(title), text }];
}
