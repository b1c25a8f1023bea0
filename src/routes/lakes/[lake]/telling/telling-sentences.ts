import type { TellingRecord } from '#lib/server/services/telling/settings.ts';

/** Which ways are on, in a sentence. */
export function headline({ calendar, changes, webhook }: TellingRecord): string {
	const ways = [
		...(calendar ? ['calendar'] : []),
		...(changes ? ['feed'] : []),
		...(webhook && !webhook.stoppedAt ? ['webhook'] : [])
	];
	const stopped = webhook?.stoppedAt ? ' The webhook has stopped.' : '';
	if (ways.length === 0) {
		return stopped ? `Nothing is told.${stopped}` : 'Nothing is told: all three ways are off.';
	}
	const last = ways.at(-1) ?? '';
	const list = ways.length === 1 ? last : `${ways.slice(0, -1).join(', ')} and ${last}`;
	return `What changes is told by ${list}.${stopped}`;
}

/** What was done, by the word that stands in the address afterwards. */
export const DONE_WORDS: Readonly<Record<string, string>> = {
	what: 'Stored.',
	kinds: 'Stored.',
	calendar: 'The calendar is off: its address leads nowhere any more.',
	changes: 'The feed is off: its address leads nowhere any more.',
	resumed: 'The webhook is tried again.',
	removed: 'The webhook is off, and what waited for it is gone.'
};
