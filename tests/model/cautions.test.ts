import { expect, test } from 'vitest';
import { cautionsFor, type CautionInput } from '#lib/model/cautions.ts';
import type { SeasonDay } from '#lib/model/season.ts';
import { warmSpells } from '#lib/model/warm-spell.ts';
import { METRIC_WORDS, wordsFor } from '#lib/model/words.ts';
import { since } from '../support/invented-since.ts';
import { LAKE, column, reading, seasonDay, siteDay } from '../support/invented-winter.ts';

function cautions(day: Partial<SeasonDay> = {}, change: Partial<CautionInput> = {}) {
	const today = siteDay(seasonDay(day));
	return cautionsFor({
		lake: LAKE,
		asOf: '2027-01-10',
		since: null,
		today,
		warm: null,
		isColdSnap: false,
		floodsWith_m: 0.2,
		slushFrozenBy: null,
		lastWeatherOn: '2027-01-10',
		readings: [],
		doubtful: new Set(),
		iceOutOn: null,
		isCleared: false,
		mayBeOpenUntil: null,
		words: METRIC_WORDS,
		...change
	});
}

const codes = (day: Partial<SeasonDay> = {}, change: Partial<CautionInput> = {}) =>
	cautions(day, change).map((caution) => caution.code);
const ALWAYS = ['openPartOnly', 'chartsForClearIce', 'askAnEngineer', 'ordersFirst'];

test('on an ordinary day the standing cautions are there and no others', () => {
	expect(codes()).toEqual(ALWAYS);
});

test.each([
	['snowUnknown', { snowKnown: false }, {}],
	['slush', { column: column({ clear_m: 0.3, slush_m: 0.03 }) }, {}],
	['whiteIce', { column: column({ clear_m: 0.24, white_m: 0.06 }) }, {}],
	['earlyIce', { column: column({ clear_m: 0.1 }) }, {}],
	['sunOnBareIce', { sun_W_m2: 200, column: column({ clear_m: 0.3 }) }, {}],
	['rotting', { column: column({ clear_m: 0.3, liquidFraction: 0.05 }) }, {}],
	['floodingNear', {}, { floodsWith_m: 0.02 }],
	['coldSnap', {}, { isColdSnap: true }],
	['clearedIce', {}, { isCleared: true }],
	['iceOut', {}, { iceOutOn: '2027-01-09' }],
	['waterLevel', {}, { lake: { ...LAKE, water: 'reservoir' as const } }],
	['weatherOld', {}, { since: since('2027-01-12', { isWeatherOld: true }) }],
	['readingNotIn', {}, { since: since('2027-01-11', { readings: [reading('2027-01-11', [0.3])] }) }]
])('%s is said when it holds', (code, day, change) => {
	expect(codes(day, change)).toContain(code);
});

test('a warm spell comes first', () => {
	const thaw = seasonDay({ aboveFreezing_h: 24, air_degC: 2 });
	const warm = warmSpells([thaw], [], () => true)[0] ?? null;
	expect(codes({}, { warm })[0]).toBe('warmSpell');
});

test('an answer of another day says so before anything else', () => {
	expect(
		codes({}, { since: since('2027-01-14', { isWeatherOld: true }), floodsWith_m: 0.02 }).slice(
			0,
			2
		)
	).toEqual(['weatherOld', 'floodingNear']);
});

test('old weather is told to the hour while it is young, and in days after that', () => {
	const weatherTo = { on: '2027-01-11', clock: '14:00' };
	const told = (now: string) =>
		cautions({}, { since: since(now, { weatherTo, isWeatherOld: true }) })[0]?.text;
	expect(told('2027-01-12')).toMatch(/known to 14:00 on 11 Jan, more than 36 hours ago/);
	expect(told('2027-01-14')).toMatch(/state of 10 Jan, 4 days ago/);
});

test('after ice-out nothing else is said of the ice', () => {
	const gone = {
		iceOutOn: '2027-01-05',
		since: since('2027-01-20', { isWeatherOld: true }),
		isColdSnap: true
	};
	expect(codes({ snowKnown: false }, gone)).toEqual(['iceOut', ...ALWAYS]);
});

test('where the ice broke is named with its place and day', () => {
	const broke = reading('2027-01-03', [], { kind: 'wentThrough', place: 'north inlet' });
	const texts = cautions({}, { readings: [broke] }).map((caution) => caution.text);
	expect(texts).toContain('The ice broke at north inlet on 3 Jan.');
});

test('a reading far from the estimate is named', () => {
	const far = reading('2027-01-03', [0.9]);
	expect(codes({}, { readings: [far], doubtful: new Set([far.id]) })).toContain('doubtfulReading');
});

test('white ice is told as the median of what holes would show', () => {
	const day = seasonDay({ column: column({ clear_m: 0.285, white_m: 0.141 }) });
	const today = siteDay(day, { white_m: 0.138 });
	const white = cautions({}, { today }).find((caution) => caution.code === 'whiteIce');
	expect(white?.text).toMatch(/^13 cm of 42 cm is estimated/);
});

test('days without a temperature are counted', () => {
	const today = siteDay(seasonDay(), { gapDays: 1 });
	const gap = cautions({}, { today }).find((caution) => caution.code === 'gaps');
	expect(gap?.text).toContain('One day without a temperature');
});

test('numbers enter the texts as the reader has chosen', () => {
	const words = { ...METRIC_WORDS, mass: () => '11,023 lb' };
	const engineer = cautions({}, { words }).find((caution) => caution.code === 'askAnEngineer');
	expect(engineer?.text).toContain('Above 11,023 lb');
});

test('slush names the day it is likely frozen by, and none where half of it is so already', () => {
	const wet = { column: column({ clear_m: 0.3, slush_m: 0.02, snow_m: 0.1 }) };
	const slush = (slushFrozenBy: string | null) =>
		cautions(wet, { slushFrozenBy }).find(({ code }) => code === 'slush')?.text;
	expect(slush('2027-01-12')).toContain('frozen by');
	expect(slush('2027-01-10')).not.toContain('frozen');
	expect(slush(null)).not.toContain('frozen');
});

test('a film of slush is a little of it in inches too, never none', () => {
	const film = { column: column({ clear_m: 0.3, slush_m: 0.006, snow_m: 0.1 }) };
	const slush = (words: typeof METRIC_WORDS) =>
		cautions(film, { words }).find(({ code }) => code === 'slush')?.text;
	expect(slush(METRIC_WORDS)).toMatch(/^About 1 cm of slush under the snow/);
	expect(slush(wordsFor({ measure: 'imperial', mass: 'lb' }))).toMatch(
		/^A little slush under the snow/
	);
});
