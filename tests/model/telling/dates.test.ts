import { expect, test } from 'vitest';
import type { LoadStatus } from '#lib/model/forecast.ts';
import { tellingDates } from '#lib/model/telling/dates.ts';
import { METRIC_WORDS } from '#lib/model/words.ts';
import { loadFacts, tellingFacts } from '../../support/telling-facts.ts';

function datesOf(status: LoadStatus, expectedFrom: string, offBy: string | null = null) {
	const load = loadFacts({ status, expectedFrom, offBy });
	return tellingDates(tellingFacts({ loads: [load] }), METRIC_WORDS);
}

test('beside "stay off" no day is told on which it is thick enough, and the day to be off is', () => {
	expect(datesOf('withheld', '2026-12-30', '2027-01-05').map(({ key }) => key)).toEqual([
		'2026-27/off/car'
	]);
	// What is still to come stands, with the status that it has.
	const ahead = datesOf('withheld', '2027-01-12');
	expect(ahead.map(({ key }) => key)).toContain('2026-27/expected/car');
	for (const { text } of ahead) expect(text).toContain('withheld, stay off');
});

test('an entry says how its load stands, but never that its holes count', () => {
	const texts = (status: LoadStatus) => datesOf(status, '2026-12-30').map(({ text }) => text);
	for (const status of ['notYet', 'reached'] as const) expect(texts(status)).toHaveLength(3);
	for (const text of texts('notYet')) expect(text).toContain('Its status, as last known: not yet.');
	for (const text of texts('reached')) expect(text).not.toContain('reached');
});
