import { expect, test } from 'vitest';
import type { LogEntry } from '../../../src/lib/server/services/sources/log.ts';
import { logRow } from '../../../src/routes/sources/log/log-row.ts';

const NOW = new Date('2027-01-20T12:20:00Z');

const row = (changes: Partial<LogEntry>) =>
	logRow(
		{
			id: 1,
			at: new Date('2027-01-20T11:00:00Z'),
			source: 'ridge',
			sourceName: 'Ridge',
			lake: null,
			lakeName: null,
			part: 'history',
			outcome: 'ok',
			stored: 24,
			calls: 1,
			bytes: 12_000,
			duration_ms: 340,
			faults: [],
			...changes
		},
		NOW
	);

test.each<[what: string, changes: Partial<LogEntry>, cost: string | null]>([
	['an answer', {}, '24 rows stored; 1 call, 12 kB in 0.3 s'],
	['the other part of one call', { calls: 0, bytes: 0 }, '24 rows stored; no call of its own'],
	['a failure before any call', { outcome: 'failed', calls: 0 }, 'no call of its own'],
	['nothing new', { outcome: 'unchanged', bytes: 0 }, '1 call, 0 kB in 0.3 s'],
	['what was not asked', { outcome: 'notAsked', calls: 0 }, null]
])('the log tells what it cost: %s', (_, changes, cost) => {
	expect(row(changes)).toMatchObject({ when: '11:00 UTC', ago: '1 hour ago', cost });
});
