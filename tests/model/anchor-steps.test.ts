import { expect, test } from 'vitest';
import { anchorSteps, growth_m_d } from '#lib/model/anchor-steps.ts';
import { estimate } from '#lib/model/ensemble/estimate.ts';
import { LAKE, hole, reading, weather } from '../support/invented-winter.ts';

const FROST = Array.from({ length: 40 }, () => -10);
const read = reading('2027-01-09', [0.1]);
const snow = reading('2027-01-05', [], { id: 'snow', holes: [hole({ snow_m: 0.1 })] });

function days(readings = [read]) {
	return estimate({
		lake: LAKE,
		freezeUpOn: '2026-12-01',
		freezeUpBy: null,
		until: '2027-01-09',
		weather: weather('2026-12-01', FROST),
		scenarios: [],
		events: [],
		readings,
		memory: null,
		members: 100,
		seed: 1
	}).days;
}

test('where a reading moved the estimate stands before and after', () => {
	const [step, ...others] = anchorSteps(days([snow, read]));
	expect(others).toEqual([]);
	expect(step).toMatchObject({ on: '2027-01-09', readingIds: [read.id] });
	expect(step?.before_m).toBeGreaterThan(0.2);
	expect(step?.after_m).toBeLessThan(step?.before_m ?? 0);
});

test('what stands before is what there would be without the reading', () => {
	const plain = days([]).at(-1)?.quantiles.total_m.p50;
	expect(anchorSteps(days())[0]?.before_m).toBeCloseTo(plain ?? NaN, 9);
});

test('growth of a day that was read goes by what had been estimated', () => {
	const plain = growth_m_d(days([]), '2027-01-09');
	expect(plain).toBeGreaterThan(0);
	expect(growth_m_d(days(), '2027-01-09')).toBeCloseTo(plain ?? NaN, 9);
	expect(growth_m_d(days(), '2026-12-01')).toBeNull();
});
