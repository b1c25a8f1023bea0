import type { MessageKind } from '#lib/model/telling/message.ts';

/** Each kind of message, and when it comes. */
export const KIND_WORDS: Record<MessageKind, { label: string; hint: string }> = {
	thawAhead: {
		label: 'Thaw ahead',
		hint: 'The forecast of the next seven days has a warm spell with a chance of 3 in 10 or more, or one has begun.'
	},
	floodAhead: {
		label: 'Flood ahead',
		hint: 'The forecast brings more snow than the ice floats, or new slush.'
	},
	thresholdExpected: {
		label: 'Threshold expected',
		hint: 'The day from which a load’s chart minimum is as likely met as not becomes known, moves or is lost.'
	},
	endExpected: {
		label: 'Last day of a load',
		hint: 'The ice falls below a load’s chart minimum within three weeks.'
	},
	readingOverdue: {
		label: 'Reading overdue',
		hint: 'The last hole is older than what you set above. Never while a status is withheld.'
	},
	weatherStale: {
		label: 'Weather stale',
		hint: 'The last observed temperature is more than 48 hours old.'
	},
	statusChanged: {
		label: 'Status of a load',
		hint: 'At once when it becomes more cautious, after two days when it becomes less so.'
	},
	readingLogged: { label: 'Reading logged', hint: 'At any site of the lake.' },
	wentThrough: { label: 'Went through', hint: 'Somebody logged that the ice broke, and where.' }
};
