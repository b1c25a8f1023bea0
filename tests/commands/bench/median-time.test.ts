import { expect, test } from 'vitest';
import { median, medianTime_ms } from '../../../src/commands/bench/median-time.ts';

test('the median is the middle value, whatever the order', () => {
	expect(median([5, 1, 100])).toBe(5);
	expect(() => median([])).toThrow('at least 1 value');
});

test('a call is made once for each warm-up and each measurement', () => {
	let calls = 0;
	expect(medianTime_ms(() => calls++, 7, 3)).toBeGreaterThanOrEqual(0);
	expect(calls).toBe(10);
});
