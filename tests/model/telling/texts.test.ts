import { expect, test } from 'vitest';
import type { LoadStatus } from '#lib/model/forecast.ts';
import { tellingDates } from '#lib/model/telling/dates.ts';
import { MESSAGE_KINDS } from '#lib/model/telling/message.ts';
import { newsMessage } from '#lib/model/telling/news-message.ts';
import { readingMessage } from '#lib/model/telling/reading-message.ts';
import type { TellingFacts } from '#lib/model/telling/facts.ts';
import type { News } from '#lib/model/telling/told.ts';
import { METRIC_WORDS, wordsFor } from '#lib/model/words.ts';
import { hole, reading } from '../../support/invented-winter.ts';
import { permissionsIn } from '../../support/permission-words.ts';
import { loadFacts, tellingFacts } from '../../support/telling-facts.ts';

const STATUSES: LoadStatus[] = [
	'notYet',
	'expectedNotDrilled',
	'reached',
	'withheld',
	'askAnEngineer'
];

const before = '2027-01-09';
const load = loadFacts();

const NEWS: [News, Partial<TellingFacts>][] = [
	[{ kind: 'thawAhead', before: null }, { thaw: { from: '2027-01-08', chance: 0.42 } }],
	[{ kind: 'thawAhead', before }, { thaw: { from: '2027-01-12', chance: 1 } }],
	[
		{ kind: 'thawAhead', before: null },
		{
			spell: { since: '2027-01-04', text: 'Warm spell of 4 Jan. Stay off, whatever the thickness.' }
		}
	],
	[{ kind: 'floodAhead', before: null }, { flood: { from: '2027-01-07', floodsWith_m: 0.04 } }],
	[{ kind: 'floodAhead', before }, { flood: { from: '2027-01-07', floodsWith_m: null } }],
	[{ kind: 'readingOverdue', before: null }, { readingDueOn: '2027-01-04' }],
	[
		{ kind: 'readingOverdue', before: null },
		{ readingDueOn: '2027-01-04', lastHoleOn: null }
	],
	[{ kind: 'weatherStale', before: null }, { stale: { since: '2027-01-02', age_h: 61 } }],
	[{ kind: 'thresholdExpected', load, before: null }, {}],
	[{ kind: 'thresholdExpected', load: loadFacts({ likelyFrom: null, until: null }), before }, {}],
	[{ kind: 'thresholdLost', load, before }, {}],
	[{ kind: 'endExpected', load, until: '2027-01-20', before: null }, {}],
	[{ kind: 'endExpected', load, until: '2027-01-20', before }, {}],
	[
		{ kind: 'endExpected', load: loadFacts({ offBy: '2027-01-20' }), until: '2027-01-20', before },
		{}
	],
	...STATUSES.flatMap((status): [News, Partial<TellingFacts>][] =>
		STATUSES.map((other) => [
			{ kind: 'statusChanged', load: loadFacts({ status }), before: other },
			{}
		])
	)
];

const messages = [
	...NEWS.map(([news, change]) => newsMessage(news, tellingFacts(change), METRIC_WORDS)),
	...(['sound', 'wet', 'candled'] as const).map((core) =>
		readingMessage(reading('2027-01-05', [0.249, 0.26], { core }), METRIC_WORDS)
	),
	readingMessage(reading('2027-01-05', [0.3], { kind: 'atLeast', place: null }), METRIC_WORDS),
	readingMessage(reading('2027-01-05', [], { holes: [hole()], secondHand: true }), METRIC_WORDS),
	readingMessage(reading('2027-01-05', [], { kind: 'wentThrough' }), METRIC_WORDS),
	readingMessage(reading('2027-01-05', [], { kind: 'wentThrough', place: null }), METRIC_WORDS)
];

const dates = [
	...tellingDates(
		tellingFacts({
			loads: [loadFacts({ offBy: '2027-03-01' })],
			iceOut: { p10: '2027-03-20', p50: '2027-03-30', p90: '2027-04-08' },
			readingDueOn: '2027-01-09',
			removalOn: '2027-03-15',
			stale: { since: '2027-01-02', age_h: 70 }
		}),
		METRIC_WORDS
	),
	...tellingDates(
		tellingFacts({
			loads: [loadFacts({ likelyFrom: null, until: null })],
			iceOut: { p10: '2027-06-20', p50: null, p90: null },
			lastHoleOn: null,
			readingDueOn: '2027-01-09'
		}),
		METRIC_WORDS
	),
	...tellingDates(
		tellingFacts({ iceOut: { p10: '2027-04-02', p50: '2027-04-02', p90: '2027-04-02' } }),
		METRIC_WORDS
	)
];

test('every kind of message is among those that are looked at', () => {
	expect(new Set(messages.map(({ kind }) => kind))).toEqual(new Set(MESSAGE_KINDS));
});

test.each([
	'The ice is safe today.',
	'You can walk on it.',
	'Good to go.',
	'Cars may drive from 12 Jan.',
	'Cleared for vehicles.',
	'It will hold a truck.',
	'There is no danger.'
])('the search finds leave where it is given: %s', (text) => {
	expect(permissionsIn(text)).not.toEqual([]);
});

test('no message and no date sounds like leave to step onto the ice', () => {
	const texts = [...messages, ...dates].flatMap(({ title, text }) => [title, text]);
	const found = texts.flatMap((text) => permissionsIn(text).map((words) => `${words}: ${text}`));
	expect(found).toEqual([]);
});

test('every message and every date ends by saying that a drilled hole decides', () => {
	for (const { title, text } of [...messages, ...dates]) {
		expect(text).toMatch(/ A drilled hole decides\.$/);
		expect(title).toMatch(/: a drilled hole decides$/);
	}
});

test('no sentence has a hole in it', () => {
	for (const { title, text } of [...messages, ...dates]) {
		expect(`${title} ${text}`).not.toMatch(/undefined|null|NaN| {2}|\.\.| ,|, \./);
		expect(title.length).toBeLessThan(120);
	}
});

test('a chance that warns is rounded up, and measured ice down', () => {
	const [thaw] = NEWS.map(([news, change]) =>
		newsMessage(news, tellingFacts(change), METRIC_WORDS)
	);
	expect(thaw?.text).toContain('with a chance of 5 in 10');
	const drilled = readingMessage(reading('2027-01-05', [0.249, 0.26]), METRIC_WORDS);
	expect(drilled.title).toContain('24 cm to 26 cm');
});

test('where a lake has several sites, what is of the ice names the site, and what is of the lake does not', () => {
	const facts = tellingFacts({
		site: 'Narrow bay',
		loads: [loadFacts()],
		flood: { from: '2027-01-07', floodsWith_m: 0.04 },
		removalOn: '2027-03-15',
		stale: { since: '2027-01-01', age_h: 90 }
	});
	const flood = newsMessage({ kind: 'floodAhead', before: null }, facts, METRIC_WORDS);
	expect(flood.title).toMatch(/^Narrow bay, Flood ahead from/);
	expect(flood.text).toMatch(/^Of the site Narrow bay\. /);
	const stale = newsMessage({ kind: 'weatherStale', before: null }, facts, METRIC_WORDS);
	expect(stale.title).not.toContain('Narrow bay');
	const named = tellingDates(facts, METRIC_WORDS).map(({ title }) =>
		title.startsWith('Narrow bay, ')
	);
	expect(named).toEqual([true, true, true, false, false]);
});

test('messages are in the units that were chosen', () => {
	const facts = tellingFacts({ flood: { from: '2027-01-07', floodsWith_m: 0.1 } });
	const words = wordsFor({ measure: 'imperial', mass: 'lb' });
	expect(newsMessage({ kind: 'floodAhead', before: null }, facts, words).text).toContain(
		'About 4 in'
	);
});
