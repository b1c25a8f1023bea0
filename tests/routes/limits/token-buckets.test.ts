import { expect, test } from 'vitest';
import { TokenBuckets } from '../../../src/routes/limits/token-buckets.ts';

const PACE = { burst: 3, each_s: 10 };

test('so many are granted at once, then one more every so often', () => {
	const buckets = new TokenBuckets(PACE);
	expect([1, 2, 3].map(() => buckets.take('a', 0))).toEqual([0, 0, 0]);
	expect(buckets.take('a', 0)).toBe(10);
	expect(buckets.take('a', 6000)).toBe(4);
	expect(buckets.take('a', 10_000)).toBe(0);
	expect(buckets.take('a', 10_000)).toBe(10);
});

test('asking in vain costs nothing, and no quiet grants more than at first', () => {
	const buckets = new TokenBuckets(PACE);
	for (let ask = 0; ask < 100; ask++) buckets.take('a', ask);
	expect(buckets.take('a', 10_100)).toBe(0);
	const after = [1, 2, 3, 4].map(() => buckets.take('a', 10_000_000));
	expect(after).toEqual([0, 0, 0, 10]);
});

test('one asker does not use up what another is granted', () => {
	const buckets = new TokenBuckets({ burst: 1, each_s: 60 });
	expect(buckets.take('a', 0)).toBe(0);
	expect(buckets.take('a', 0)).toBe(60);
	expect(buckets.take('b', 0)).toBe(0);
});

test('a clock that is set back grants nothing', () => {
	const buckets = new TokenBuckets({ burst: 1, each_s: 60 });
	buckets.take('a', 1_000_000);
	expect(buckets.take('a', 0)).toBe(60);
	expect(buckets.take('a', 60_000)).toBe(0);
});

test('only so many askers are remembered, those seen last', () => {
	const buckets = new TokenBuckets({ burst: 1, each_s: 60 }, 100);
	for (let asker = 0; asker < 5000; asker++) buckets.take(String(asker), 0);
	expect(buckets.size).toBe(100);
	expect(buckets.take('4999', 0)).toBe(60);
	expect(buckets.take('0', 0)).toBe(0);
});
