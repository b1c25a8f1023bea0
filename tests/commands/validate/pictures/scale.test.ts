import { expect, test } from 'vitest';
import { scaleOver } from '../../../../src/commands/validate/pictures/scale.ts';

test.each([
	[[3, 78], 0, 80],
	[[-27, 34], -40, 40],
	[[0.4, 1.9], 0, 2],
	[[-3, -1], -3, 0],
	[[], 0, 1]
])('a scale over %j runs from %d to %d, zero included', (values, from, to) => {
	const scale = scaleOver(values, 'cm');
	expect([scale.from, scale.to].map((end) => end + 0)).toEqual([from, to]);
	expect(scale.ticks.at(0)).toBeCloseTo(from, 9);
	expect(scale.ticks.at(-1)).toBeCloseTo(to, 9);
	expect(scale.ticks.some((tick) => Math.abs(tick) < 1e-9)).toBe(true);
	expect(scale.ticks.length).toBeGreaterThan(1);
});

test('ticks are a round step apart', () => {
	expect(scaleOver([0, 78], 'cm').ticks).toEqual([0, 20, 40, 60, 80]);
});
