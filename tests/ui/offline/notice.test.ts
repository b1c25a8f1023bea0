import { expect, test } from 'vitest';
import { keptAge_ms, noticeOf } from '../../../src/lib/ui/offline/notice.ts';

const HOUR_MS = 3_600_000;
const AT_ms = Date.parse('2027-01-20T08:00:00Z');
const NEVER = { device_ms: 0, server_ms: 0 };

/** Hours, for a page that was kept by two clocks, by the clock of now and by what was seen since. */
function age_h(kept: [device: number, server: number], now: number, seen: [number, number]) {
	const at = (hours: number) => AT_ms + hours * HOUR_MS;
	const stamps = { keptAt_ms: at(kept[0]), madeAt_ms: at(kept[1]) };
	const latest = { device_ms: at(seen[0]), server_ms: at(seen[1]) };
	return keptAge_ms(stamps, at(now), latest) / HOUR_MS;
}

test.each([
	['right clocks', [0, 0], 30, [30, 0], 30],
	['a clock that was set back after 30 hours were seen on it', [0, 0], -50, [30, 0], 30],
	['one set back, and a page of the server that came later', [0, 0], -50, [-50, 40], 40],
	['a clock that is back all along', [-50, 0], -20, [-20, 0], 30],
	['a page of just now on a clock that is back', [-50, 0], -50, [-50, 0], 0],
	['a page of just now on a clock that is ahead', [50, 0], 50, [50, 0], 50]
] as const)('by %s a kept page is no younger than is known', (_, kept, now, seen, hours) => {
	expect(age_h([...kept], now, [...seen])).toBe(hours);
});

test('with one stamp alone, or none, nothing younger is made of it', () => {
	const now_ms = AT_ms + 5 * HOUR_MS;
	const age = (keptAt_ms: number, madeAt_ms: number) =>
		keptAge_ms({ keptAt_ms, madeAt_ms }, now_ms, NEVER) / HOUR_MS;
	expect([age(AT_ms, Number.NaN), age(0, AT_ms), age(0, Number.NaN)]).toEqual([5, 5, Infinity]);
});

test('after a day the notice is that of an old copy', () => {
	const of = (hours: number) =>
		noticeOf(new Date(AT_ms), new Date(AT_ms + hours * HOUR_MS), 'Etc/UTC');
	expect([of(24).isOld, of(24.1).isOld]).toEqual([false, true]);
});
