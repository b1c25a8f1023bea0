import { expect, test } from 'vitest';
import { digestOf, type LakeDigest } from '../../src/lib/server/services/digests/digest.ts';
import { attentionOf, byAttention, cardCautions } from '../../src/routes/attention.ts';
import { changeSentence, estimateWords, nextSentence } from '../../src/routes/card-words.ts';
import { nextDate } from '../../src/routes/next-date.ts';
import { inventedView } from '../support/invented-view.ts';

const METRIC = { measure: 'metric', mass: 'kg' } as const;

const load = (change: Partial<LakeDigest['loads'][number]> = {}): LakeDigest['loads'][number] => ({
	id: 'on-foot',
	name: 'On foot',
	use: 'onFoot',
	status: 'reached',
	isNew: false,
	required_m: 0.15,
	expectedFrom: '2026-12-20',
	likelyFrom: '2026-12-28',
	until: null,
	offBy: null,
	...change
});

function digest(change: Partial<LakeDigest> = {}): LakeDigest {
	const base = digestOf(inventedView(), null);
	return {
		...base,
		loads: [load()],
		cautions: [],
		lastReadingOn: '2027-02-10',
		wentThroughOn: null,
		...change
	};
}

const caution = (...codes: string[]) => ({ cautions: codes.map((code) => ({ code, text: code })) });

test('a lake without an adverse fact needs no attention', () => {
	expect(attentionOf(digest())).toBeNull();
});

test.each([
	['wentThrough', { wentThroughOn: '2027-02-01' }],
	['withheld', { loads: [load(), load({ status: 'withheld' })] }],
	['weatherOld', caution('weatherOld')],
	['weatherOld', caution('forecastOld')],
	['weatherOld', { day: null }],
	['flooding', caution('floodingNear')],
	['coldSnap', caution('coldSnap')],
	['doubtful', caution('doubtfulReading')],
	['doubtful', caution('snowUnknown')],
	['notDrilled', { lastReadingOn: '2027-01-20' }],
	['nothingStored', { status: 'noWeather', lastReadingOn: null }]
] as [string, Partial<LakeDigest>][])('%s is told for %j', (expected, change) => {
	expect(attentionOf(digest(change))).toBe(expected);
	expect(attentionOf(digest({ ...change, iceOutOn: '2027-02-11' }))).toBeNull();
});

test('of several adverse facts the weightiest is told', () => {
	const all = {
		...caution('weatherOld', 'slush'),
		loads: [load({ status: 'withheld' })],
		wentThroughOn: '2027-02-11'
	};
	expect(attentionOf(digest(all))).toBe('wentThrough');
	expect(attentionOf(digest({ ...all, wentThroughOn: '2027-01-01' }))).toBe('withheld');
	expect(attentionOf(digest({ ...all, wentThroughOn: null, loads: [] }))).toBe('weatherOld');
});

test('lakes are sorted by weight, then by the next date, then by name', () => {
	const lake = (name: string, attention: 'withheld' | 'doubtful' | null, on: string | null) => ({
		name,
		attention,
		next: on === null ? null : { on }
	});
	const sorted = [
		lake('e', null, null),
		lake('d', null, '2027-03-01'),
		lake('c', 'doubtful', null),
		lake('b', 'withheld', '2027-03-01'),
		lake('a', 'withheld', '2027-03-01'),
		lake('f', null, '2027-02-20')
	].toSorted(byAttention);
	expect(sorted.map(({ name }) => name).join('')).toBe('abcfde');
});

test('the caution that says why goes with the attention, and what is weightier beside it', () => {
	const both = caution('weatherOld', 'warmSpell', 'slush');
	expect(cardCautions(both, 'withheld')).toEqual({ why: 'warmSpell', other: 'weatherOld' });
	expect(cardCautions(both, null)).toEqual({ why: null, other: 'weatherOld' });
	expect(cardCautions(caution('slush'), 'flooding')).toEqual({ why: 'slush', other: null });
});

test('a last day that is near goes before good news, and a far one after it', () => {
	const car = load({ name: 'Car', expectedFrom: '2027-02-20', likelyFrom: '2027-03-05' });
	const until = (on: string) => [load({ until: on }), car];
	expect(nextDate(digest({ loads: until('2027-02-28') }))).toEqual({
		on: '2027-02-28',
		kind: 'until',
		loads: ['on foot']
	});
	expect(nextDate(digest({ loads: until('2027-04-01') }))).toEqual({
		on: '2027-02-20',
		kind: 'expected',
		loads: ['car']
	});
	expect(nextDate(digest({ loads: [load({ until: '2027-04-01' })] }))?.kind).toBe('until');
	expect(nextDate(digest())).toBeNull();
});

test('the cautious day to be off stands for the last one, and the removal date before either', () => {
	const off = load({ until: '2027-03-01', offBy: '2027-02-24' });
	expect(nextDate(digest({ loads: [off] }))).toEqual({
		on: '2027-02-24',
		kind: 'offBy',
		loads: ['on foot']
	});
	const removed = { loads: [off], removalOn: '2027-02-24' };
	expect(nextDate(digest(removed))).toMatchObject({ on: '2027-02-24', kind: 'removal' });
	// On the day itself both still matter; what was expected does not.
	const due = load({ offBy: '2027-02-12', expectedFrom: '2027-02-12' });
	expect(nextDate(digest({ loads: [due] }))).toMatchObject({ kind: 'offBy' });
	expect(nextDate(digest({ removalOn: '2027-02-12' }))?.kind).toBe('removal');
	expect(nextDate(digest({ removalOn: '2027-02-11' }))).toBeNull();
	expect(nextSentence({ on: '2027-02-24', kind: 'offBy', loads: ['car'] })).toBe(
		'Next: 24 Feb, the latest day to have car off.'
	);
	expect(nextSentence({ on: '2027-03-15', kind: 'removal', loads: ['everything'] })).toBe(
		'Next: 15 Mar, the local removal date for everything.'
	);
});

test('the next date, the change and the estimate are said in a few words', () => {
	expect(nextSentence({ on: '2027-02-20', kind: 'expected', loads: ['car', 'ATV'] })).toBe(
		'Next: 20 Feb, car and ATV expected by thickness.'
	);
	expect(nextSentence({ on: '2027-02-20', kind: 'until', loads: ['a', 'b', 'c'] })).toBe(
		'Next: 20 Feb, the last day told for 3 loads.'
	);
	const card = {
		growth_m_d: 0.004,
		boundChange_m: -0.0021,
		newLoads: ['Car'],
		warmSince: '2027-02-10',
		asOf: '2027-02-10'
	};
	expect(changeSentence(card, METRIC)).toBe(
		'In the last day: estimate +4 mm, lower bound −2 mm; a warm spell has begun; new above the lower bound: Car.'
	);
	expect(changeSentence({ ...card, growth_m_d: null }, METRIC)).toBeNull();
	expect(estimateWords({ total_m: 0.219, totalLower_m: 0.149 }, METRIC)).toBe(
		'About 21 cm of ice, lower bound 14 cm'
	);
	expect(estimateWords({ total_m: 0, totalLower_m: 0 }, METRIC)).toContain('Open water');
});
