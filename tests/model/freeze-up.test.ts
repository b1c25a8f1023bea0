import { expect, test } from 'vitest';
import { freezeUpSpan } from '#lib/model/freeze-up.ts';
import { record } from '../support/invented-winter.ts';

test('freeze-up on a known day has no span', () => {
	expect(freezeUpSpan(record())).toEqual({
		first: '2026-12-01',
		middle: '2026-12-01',
		last: '2026-12-01'
	});
	expect(freezeUpSpan(record({ freezeUpOn: null }))).toBeNull();
});

test('freeze-up between two days is estimated from the middle one', () => {
	expect(freezeUpSpan(record({ freezeUpBy: '2026-12-06' }))?.middle).toBe('2026-12-03');
});
