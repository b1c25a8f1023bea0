import { expect, test } from 'vitest';
import { strengthOf, type StrengthInput } from '#lib/model/leaving/strength.ts';
import { calm } from '#lib/model/warm-day.ts';
import { METRIC_WORDS } from '#lib/model/words.ts';
import { column } from '../../support/invented-winter.ts';

const SNOWY = column({ clear_m: 0.4, snow_m: 0.1 });
const BARE = column({ clear_m: 0.4 });
const SPELL = { ...calm('2027-03-10'), since: '2027-03-09', lastWarmOn: '2027-03-10' };

function strength(change: Partial<StrengthInput> = {}) {
	return strengthOf({
		warm: calm('2027-03-10'),
		column: SNOWY,
		sun_W_m2: 200,
		warmLast_h: 0,
		words: METRIC_WORDS,
		...change
	});
}

test.each<[state: string, change: Partial<StrengthInput>, source: string | null]>([
	['inFrost', {}, null],
	['open', { column: column(), warm: { ...SPELL, state: 'withheld' } }, null],
	['mild', { warmLast_h: 3 }, 'SMHI'],
	['sunlit', { column: BARE, warmLast_h: 3 }, 'Ashton'],
	['weakened', { column: BARE, warm: { ...SPELL, state: 'doubled' } }, 'Minnesota DNR'],
	['closed', { warm: { ...SPELL, state: 'withheld' } }, 'TM 5-852-1'],
	['rotten', { column: { ...SNOWY, liquidFraction: 0.06 } }, 'Bulatov'],
	[
		'rotten',
		{ warm: { ...SPELL, state: 'withheld', badCoreOn: '2027-03-10' } },
		'Encyclopaedia Britannica'
	]
])('%s is told with the rule that says so', (state, change, source) => {
	const told = strength(change);
	expect(told.state).toBe(state);
	if (source === null) expect(told.rule).toBeNull();
	else expect(told.rule?.source).toContain(source);
	expect(told.text).not.toMatch(/\bsafe/i);
});

test('what water inside has taken is told beside the state, with snow that keeps the sun off', () => {
	expect(strength().leftFraction).toBe(1);
	const wet = strength({ column: { ...SNOWY, liquidFraction: 0.1 } });
	expect(wet.leftFraction).toBeCloseTo(0.35, 2);
});
