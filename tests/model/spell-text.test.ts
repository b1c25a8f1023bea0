import { expect, test } from 'vitest';
import { shortSpellText, spellText } from '#lib/model/spell-text.ts';
import { calm, type WarmDay } from '#lib/model/warm-day.ts';
import { METRIC_WORDS } from '#lib/model/words.ts';

function spell(change: Partial<WarmDay> = {}): WarmDay {
	return {
		...calm('2027-03-05'),
		state: 'withheld',
		since: '2027-03-02',
		lastWarmOn: '2027-03-03',
		frost_h: 24,
		frost_degCd: 6,
		...change
	};
}

test('no spell has no text', () => {
	expect(spellText(calm('2027-03-05'), METRIC_WORDS)).toBeNull();
});

test('a spell is told with its days, what it does and what is still missing', () => {
	expect(spellText(spell(), METRIC_WORDS)).toBe(
		'Warm spell from 2 Mar to 3 Mar. Stay off, whatever the thickness. It ends after 72 hours below freezing with 15 °C·d of frost (so far 24 hours, 6 °C·d) and a new hole on the open part.'
	);
});

test('after enough frost the hole alone is missing', () => {
	const text = spellText(spell({ state: 'doubled', frost_h: 72, frost_degCd: 20 }), METRIC_WORDS);
	expect(text).toContain('The thickness asked for is doubled.');
	expect(text).toContain('The frost since has been enough; a new hole on the open part ends it.');
});

test('sun on bare ice asks for a sound core', () => {
	expect(spellText(spell({ hadSunOnBareIce: true }), METRIC_WORDS)).toContain(
		'a new hole on the open part whose core is logged as sound, since sun has been on bare ice'
	);
});

test('a bad core is told as what it is', () => {
	const bad = spell({ lastWarmOn: null, badCoreOn: '2027-03-02' });
	expect(spellText(bad, METRIC_WORDS)).toBe(
		'The core of 2 Mar was wet or candled. Stay off, whatever the thickness. Only a core of the open part logged as sound ends it.'
	);
});

test('the short form says why, and when only a hole is missing', () => {
	expect(shortSpellText(spell({ since: '2027-03-03' }), METRIC_WORDS)).toBe(
		'Stay off: warm spell of 3 Mar.'
	);
	expect(shortSpellText(spell({ frost_h: 96, frost_degCd: 30 }), METRIC_WORDS)).toContain(
		'and no hole since that ends it'
	);
});
