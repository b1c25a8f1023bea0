import type { IsoDate } from '../calendar.ts';
import { nameAmid } from '../load-name.ts';
import type { Words } from '../words.ts';
import { headed, message } from './closing.ts';
import type { LoadFacts, TellingFacts } from './facts.ts';
import type { Message } from './message.ts';
import { STATUS_NAMES } from './status-names.ts';
import type { LoadNews } from './told-load.ts';

/** News of a load in words. */
export function loadMessage(news: LoadNews, { asOf, today }: TellingFacts, words: Words): Message {
	const { load } = news;
	const about = { loadId: load.id };
	const name = nameAmid(load);
	const known = `By the weather known on ${words.day(asOf)}`;
	switch (news.kind) {
		case 'statusChanged': {
			const title = headed(`${load.name}, ${STATUS_NAMES[load.status]}`);
			// It may be read long after it was sent.
			const known = `Known on ${words.day(today)}.`;
			const text = message(load.reason, `Before: ${STATUS_NAMES[news.before]}.`, known);
			return { ...about, kind: news.kind, on: asOf, title, text };
		}
		case 'thresholdExpected': {
			const day = words.day(load.expectedFrom ?? asOf);
			const title = headed(`${load.name}, expected from ${day} (1 in 2), not drilled`);
			const text = message(
				`${known}: ${chancesText(load, words)}`,
				news.before === null ? null : `Before, ${words.day(news.before)} was told.`,
				OPEN_PART
			);
			return { ...about, kind: news.kind, on: load.expectedFrom, title, text };
		}
		case 'thresholdLost': {
			const title = headed(`${load.name}, expected no more`);
			const text = message(
				`${known} no day is named from which the chart minimum for ${name} is met.`,
				`Before, ${words.day(news.before)} was told.`
			);
			return { ...about, kind: 'thresholdExpected', on: null, title, text };
		}
		case 'endExpected':
			return endMessage(news, known, words);
	}
}

function endMessage(
	{ load, until, before }: Extract<LoadNews, { kind: 'endExpected' }>,
	known: string,
	words: Words
): Message {
	const day = words.day(until);
	const isCautious = load.offBy !== null;
	const why = isCautious
		? `${known} ${nameAmid(load)} has to be off by ${day}: ${OFF_BY}`
		: `${known} the chart minimum for ${nameAmid(load)} is met until ${day} as likely as not, and a warm spell closes the ice sooner.`;
	const told = before === null ? null : `Before, ${words.day(before)} was told.`;
	return {
		kind: 'endExpected',
		loadId: load.id,
		on: until,
		title: headed(`${load.name}, off the ice ${isCautious ? 'by' : 'before'} ${day}`),
		text: message(why, told, END_RULES)
	};
}

/** What sets the latest day to have a load off. */
export const OFF_BY =
	'the earliest of the local removal date, the day on which its thickness ends in one of ten cases, and the day before a warm spell that lasts.';

export const OPEN_PART =
	'That is for the open part of the site; currents, narrows, ridges, shores and landings can have a fraction of it. Local orders come first.';

export const END_RULES =
	'Have everything off days before: landings and shores give way first, and what is frozen in takes days to free. Orders and removal dates of the local authority come first.';

/** The days of a load with their chances. */
export function chancesText(load: LoadFacts, words: Words): string {
	const at = (on: IsoDate | null, how: string) => (on === null ? [] : [`${how} ${words.day(on)}`]);
	const parts = [
		...at(load.expectedFrom, 'as likely as not from'),
		...at(load.likelyFrom, 'in nine cases of ten from'),
		...at(load.until, 'and no more than as likely as not after')
	];
	return `the chart minimum for ${nameAmid(load)} is met ${parts.join(', ')}.`;
}
