import { expect, test } from 'vitest';
import { trackLoss } from '#lib/model/ensemble/loss.ts';
import { emptyHoles } from '#lib/model/ensemble/spots.ts';
import { outlook } from '#lib/model/outlook.ts';
import { asked, reading } from '../../support/invented-winter.ts';

const holesOf = (totals_m: readonly number[]) => ({
	...emptyHoles(totals_m.length),
	total_m: Float64Array.from(totals_m)
});

/** The loss after days on which two members are as thick as told. */
function after(days: readonly (readonly number[])[], before: Record<number, number[]> = {}) {
	const losses = trackLoss(2);
	days.forEach((totals_m, index) => {
		const read = before[index];
		const on = `2027-03-0${index + 1}`;
		losses.see({ on, holes: holesOf(totals_m), before: read ? holesOf(read) : null });
	});
	return losses.loss();
}

test('before any day nothing is known', () => {
	expect(trackLoss(2).loss()).toBeNull();
});

test('what melts since the peak adds up, each member for itself', () => {
	const loss = after([
		[0.3, 0.4],
		[0.35, 0.38],
		[0.32, 0.36]
	]);
	expect(loss?.p50_m).toBeCloseTo((0.03 + 0.04) / 2, 9);
	expect(loss?.peakOn).toBe('2027-03-02');
});

test('growth takes back from a loss, and nothing is lost at a peak', () => {
	expect(
		after([
			[0.3, 0.3],
			[0.25, 0.25],
			[0.28, 0.28]
		])?.p50_m
	).toBeCloseTo(0.02, 9);
	expect(
		after([
			[0.3, 0.3],
			[0.25, 0.25],
			[0.31, 0.31]
		])?.p50_m
	).toBe(0);
});

test('a reading that finds less has melted nothing', () => {
	const days = [
		[0.4, 0.4],
		[0.2, 0.2],
		[0.19, 0.19]
	];
	expect(after(days)?.p50_m).toBeCloseTo(0.21, 9);
	expect(after(days, { 1: [0.4, 0.4] })?.p50_m).toBeCloseTo(0.01, 9);
});

test('a skim where all had gone makes up for no more than it is', () => {
	const days = [
		[0.1, 0.1],
		[0, 0],
		[0, 0],
		[0.02, 0.02]
	];
	expect(after(days.slice(0, 3))?.p50_m).toBeCloseTo(0.1, 9);
	expect(after(days)?.p50_m).toBeCloseTo(0.08, 9);
});

test('through a winter the loss is what the estimate has lost since it was thickest', () => {
	const frost = Array.from({ length: 60 }, () => -12);
	const thaw = Array.from({ length: 9 }, () => 5);
	const answer = outlook(asked([...frost, ...thaw], { members: 60 }));
	const thickness = answer?.forecast.days.map(({ total_m }) => total_m.p50 ?? 0) ?? [];
	const lost_m = Math.max(...thickness) - (thickness.at(-1) ?? 0);
	const leaving = answer?.forecast.leaving;
	expect(lost_m).toBeGreaterThan(0.05);
	expect(leaving?.lost.p50_m).toBeCloseTo(lost_m, 1);
	expect(leaving?.peakOn).toBe('2027-01-30');
	expect(leaving?.thawSincePeak_degCd).toBeCloseTo(45, 0);
});

test('a thin reading in frost is no loss', () => {
	const frost = Array.from({ length: 60 }, () => -12);
	const answer = outlook(
		asked(frost, { members: 60, readings: [reading('2027-01-20', [0.3, 0.3, 0.3])] })
	);
	expect(answer?.forecast.leaving?.lost.p90_m).toBe(0);
	expect(answer?.forecast.leaving?.texts.lost).toMatch(/^No ice has been lost/);
});
