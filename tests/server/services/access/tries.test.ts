import { expect, test } from 'vitest';
import { Tries } from '../../../../src/lib/server/services/access/tries.ts';

test('nobody waits longer than a minute, however often they fail', () => {
	const tries = new Tries();
	let now_ms = 0;
	for (let n = 0; n < 40; n++) {
		const wait_ms = tries.begin('address', true, now_ms);
		expect(wait_ms).toBeLessThanOrEqual(60_000);
		now_ms += wait_ms || 1;
	}
	tries.begin('address', true, now_ms);
	expect(tries.begin('address', true, now_ms)).toBe(60_000);
});

test('many addresses together have twenty tries a minute, and then the next has some', () => {
	const tries = new Tries();
	const begin = (n: number, now_ms: number) => tries.begin(`address ${n}`, false, now_ms);
	for (let n = 0; n < 20; n++) expect(begin(n, n * 100)).toBe(0);
	expect(begin(20, 2000)).toBe(58_000);
	expect(tries.begin('a known browser', true, 2000)).toBe(0);
	expect(begin(21, 60_000)).toBe(0);
	expect(begin(22, 60_000)).toBe(100);
});

test('many at once gain nothing: each counts as failed until it has succeeded', () => {
	const tries = new Tries();
	const waits = Array.from({ length: 10 }, () => tries.begin('address', true, 0));
	expect(waits.filter((wait_ms) => wait_ms === 0)).toHaveLength(3);
	tries.succeeded('address');
	expect(tries.begin('address', true, 0)).toBe(0);
});

test('after an hour a failure is forgotten', () => {
	const tries = new Tries();
	for (let n = 0; n < 3; n++) tries.begin('address', true, 0);
	expect(tries.begin('address', true, 3_600_001)).toBe(0);
	expect(tries.begin('address', true, 3_600_002)).toBe(0);
});
