import type { LogEntry } from '#lib/server/services/sources/log.ts';
import { ago, moment } from '#lib/ui/format/moment.ts';
import { counted, grouped } from '#lib/ui/format/number.ts';

const OUTCOMES: Readonly<Record<LogEntry['outcome'], string>> = {
	ok: 'Answered',
	unchanged: 'Answered: nothing new',
	failed: 'Failed',
	notAsked: 'Not asked'
};
const PARTS = { history: 'past days', forecast: 'forecast' } as const;

/** One asking of a source as the log shows it. */
export function logRow(entry: LogEntry, now: Date) {
	const { id, at, source, sourceName, lake, lakeName, part, outcome, faults } = entry;
	return {
		id,
		iso: at.toISOString(),
		when: `${moment(at, now, 'UTC')} UTC`,
		ago: ago(at, now),
		source,
		sourceName,
		lake,
		lakeName,
		part: PARTS[part],
		outcome: OUTCOMES[outcome],
		isTrouble: outcome === 'failed',
		cost: outcome === 'notAsked' ? null : cost(entry),
		faults: faults.map(({ text }) => text)
	};
}

export type LogRow = ReturnType<typeof logRow>;

function cost({ outcome, stored, calls, bytes, duration_ms }: LogEntry): string {
	// What one call brought for both parts is counted with the past days.
	const taken =
		calls === 0
			? 'no call of its own'
			: `${counted(calls, 'call')}, ${grouped(bytes / 1000)} kB in ${(duration_ms / 1000).toFixed(1)} s`;
	return outcome === 'ok' ? `${counted(stored, 'row')} stored; ${taken}` : taken;
}
