import type { IsoDate } from '../calendar.ts';

/** Everything that may be told. Webhooks choose among them; the feed of changes has them all. */
export const MESSAGE_KINDS = [
	'thawAhead',
	'floodAhead',
	'thresholdExpected',
	'endExpected',
	'readingOverdue',
	'weatherStale',
	'statusChanged',
	'readingLogged',
	'wentThrough'
] as const;
export type MessageKind = (typeof MESSAGE_KINDS)[number];

/** What is told, in words that are no permission. */
export interface Message {
	kind: MessageKind;
	/** The load that it is about; `null` when it is about the ice. */
	loadId: string | null;
	/** The day that it is about; `null` when it names none. */
	on: IsoDate | null;
	title: string;
	text: string;
}
