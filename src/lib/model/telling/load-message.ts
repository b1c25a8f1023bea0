import type { IsoDate } from '../calendar.ts';
import type { Words } from '../words.ts';
import { headed, message } from './closing.ts';
import type { LoadFacts, TellingFacts } from './facts.ts';
import type { Message } from './message.ts';
import { STATUS_NAMES } from './status-names.ts';
import type { LoadNews } from './told-load.ts';

/** News of a load in words. */
export function loadMessage(news: LoadNews, { asOf }: TellingFacts, words: Words): Message {
	const { load } = news;
	const about = { loadId: load.id };
	const known = `By the weather known on ${words.day(asOf)}`;
	switch (news.kind) {
		case 'statusChanged': {
			const title = headed(`${load.name}, ${STATUS_NAMES[load.status]}`);
			const text = message(load.reason, `Before: ${STATUS_NAMES[news.before]}.`);
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
				`${known} no day is named from which the chart minimum for ${load.name} is met.`,
				`Before, ${words.day(news.before)} was told.`
			);
			return { ...about, kind: 'thresholdExpected', on: null, title, text };
		}
		case 'endExpected': {
			const title = headed(`${load.name}, off the ice before ${words.day(news.until)}`);
			const text = message(
				`${known} the chart minimum for ${load.name} is met until ${words.day(news.until)} as likely as not, and a warm spell closes the ice sooner.`,
				news.before === null ? null : `Before, ${words.day(news.before)} was told.`,
				END_RULES
			);
			return { ...about, kind: news.kind, on: news.until, title, text };
		}
	}
}

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
	return `the chart minimum for ${load.name} is met ${parts.join(', ')}.`;
}
