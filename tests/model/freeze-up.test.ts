import { expect, test } from 'vitest';
import { freezeUpDoubt, freezeUpSpan } from '#lib/model/freeze-up.ts';
import type { SeasonDay } from '#lib/model/season.ts';
import { column, record, seasonDays } from '../support/invented-winter.ts';

const thick = (clear_m: number): Partial<SeasonDay> => ({ column: column({ clear_m }) });

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

test('the spread of the seasons from first, middle and last day is the doubt it adds', () => {
	const span = { first: '2026-12-01', middle: '2026-12-03', last: '2026-12-05' };
	const middle = seasonDays('2026-12-03', [thick(0), thick(0.03), thick(0.05)]);
	const doubt = freezeUpDoubt(span, middle, (from) =>
		from === span.first
			? seasonDays('2026-12-01', [thick(0), thick(0.03), thick(0.06), thick(0.08), thick(0.1)])
			: seasonDays('2026-12-05', [thick(0)])
	);
	expect(doubt.get('2026-12-04')?.total).toBeCloseTo(0.08 / Math.sqrt(12), 9);
	expect(doubt.get('2026-12-05')?.effective).toBeCloseTo(0.1 / Math.sqrt(12), 9);
});
