import { expect, test } from 'vitest';
import { estimate } from '#lib/model/ensemble/estimate.ts';
import type { EnsembleInput } from '#lib/model/ensemble/run.ts';
import { LAKE, reading, weather } from '../../support/invented-winter.ts';

const AIR = Array.from({ length: 120 }, (_, day) => -12 + 0.2 * day);
const INPUT: EnsembleInput = {
	lake: LAKE,
	freezeUpOn: '2026-12-01',
	freezeUpBy: '2026-12-06',
	until: '2027-03-30',
	weather: weather('2026-12-01', AIR),
	scenarios: [],
	events: [],
	// The last before the kept day raises the bound by one hole, which is held back from then on.
	readings: [
		reading('2026-12-28', [0.2, 0.22]),
		reading('2027-01-06', [0.33], { id: 'b' }),
		reading('2027-02-20', [0.45, 0.46], { id: 'c' })
	],
	memory: null,
	members: 50,
	seed: 7
};

test('a run that goes on from a kept day is the run that was never interrupted', () => {
	const whole = estimate(INPUT, { keepOn: '2027-01-10' });
	expect(whole.kept?.days.at(-1)?.on).toBe('2027-01-10');
	const resumed = () => estimate(INPUT, whole.kept ? { resume: whole.kept } : {});
	expect(resumed().days).toEqual(whole.days);
	expect(resumed().iceOut).toEqual(whole.iceOut);
	expect(resumed().days).toEqual(whole.days);
	const onKept = whole.kept?.days.at(-1);
	expect(onKept?.bound.spot_m).toBeLessThan((onKept?.quantiles.effective_m.p10 ?? 0) - 0.005);
});

test('a run can be cut short on the day it keeps', () => {
	const whole = estimate(INPUT);
	const { kept } = estimate({ ...INPUT, until: '2027-01-10' }, { keepOn: '2027-01-10' });
	expect(estimate(INPUT, kept ? { resume: kept } : {}).days).toEqual(whole.days);
});

test('a day that does not come is not kept', () => {
	expect(estimate(INPUT, { keepOn: '2027-06-01' }).kept).toBeNull();
	expect(estimate(INPUT).kept).toBeNull();
});
