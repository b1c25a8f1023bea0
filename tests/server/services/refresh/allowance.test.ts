import { expect, test } from 'vitest';
import {
	backOff_min,
	callsFor,
	interval_min,
	refusalFor
} from '../../../../src/lib/server/services/refresh/allowance.ts';
import { newPace } from '../../../../src/lib/server/services/refresh/pace.ts';
import type { SourceState } from '../../../../src/lib/server/storage/source-states.ts';
import { freshContext } from '../../../support/fresh-context.ts';
import { inventedSource } from '../../../support/invented-source.ts';

const NOW = new Date('2027-01-20T12:00:00Z');
const limited = (perDay: number, minInterval_min = 10) =>
	inventedSource({ limits: { perDay, minInterval_min } });

const state = (changes: Partial<SourceState> = {}): SourceState => ({
	source_id: 'invented-weather',
	calls_on: null,
	calls: 0,
	retry_after_at: null,
	back_off_until_at: null,
	last_success_at: null,
	failures: 0,
	...changes
});

const ask = (changes: Partial<SourceState>, { perDay = 10, calls = 1, isOnDemand = false } = {}) =>
	refusalFor(limited(perDay), state(changes), calls, { now: NOW, isOnDemand });

test('a lake is refreshed every three hours where the limit leaves room', () => {
	expect(interval_min(limited(10_000), 1)).toBe(180);
	expect(interval_min(limited(10_000, 360), 1)).toBe(360);
});

test.each([10, 100, 1000])(
	'%d lakes on 1,000 calls a day leave a fifth of them unused',
	(lakes) => {
		const rounds = 1440 / interval_min(limited(1000), lakes);
		expect(rounds * lakes * 2).toBeLessThanOrEqual(800.0001);
	}
);

test('a first call that names the address of the next counts as well', () => {
	const source = inventedSource();
	const first = [{ address: 'https://weather.invalid/points', next: '$.forecast' }];
	const calls = source.calls.map((call) => ({ ...call, first }));
	expect(callsFor({ ...source, calls }, 'forecast')).toBe(2);
	expect(callsFor({ ...source, calls: [] }, 'forecast')).toBe(0);
});

test('failures in a row are answered with waits that double, to six hours', () => {
	expect([1, 2, 3, 4, 5, 6, 7, 20].map(backOff_min)).toEqual([5, 10, 20, 40, 80, 160, 320, 360]);
});

test('the daily limit is kept, and ends with the day', () => {
	expect(ask({ calls_on: '2027-01-20', calls: 8 })).toBeNull();
	// A lost call is made once more, so two must be left.
	const refused = ask({ calls_on: '2027-01-20', calls: 9 }, { isOnDemand: true });
	expect(refused?.until).toEqual(new Date('2027-01-21T00:00:00Z'));
	expect(refused?.text).toContain('allows 10 calls a day and 9 are used');
	expect(ask({ calls_on: '2027-01-19', calls: 10 })).toBeNull();
});

test('what the source asked for holds for a person too, our own back-off does not', () => {
	const until = '2027-01-20T12:30:00.000Z';
	expect(ask({ retry_after_at: until }, { isOnDemand: true })?.until).toEqual(new Date(until));
	expect(ask({ back_off_until_at: until, failures: 3 })?.text).toContain('failed 3 times in a row');
	expect(ask({ back_off_until_at: until, failures: 3 }, { isOnDemand: true })).toBeNull();
	expect(ask({ retry_after_at: '2027-01-20T11:59:00.000Z' })).toBeNull();
});

test('no more calls than a minute allows are made within one', async () => {
	const { weather } = await freshContext();
	let now_ms = 0;
	const starts_ms: number[] = [];
	const wait = async (duration_ms: number) => {
		now_ms += duration_ms;
	};
	const pace = newPace({ ...weather, wait }, () => now_ms);
	const source = inventedSource({ limits: { perDay: 1000, perMinute: 4, minInterval_min: 0 } });
	for (let index = 0; index < 20; index++) {
		await pace.turn(source, 2, new AbortController().signal);
		starts_ms.push(now_ms, now_ms);
	}
	for (const at_ms of starts_ms) {
		const within = starts_ms.filter((other) => other >= at_ms && other < at_ms + 60_000);
		expect(within.length).toBeLessThanOrEqual(4);
	}
	expect(now_ms).toBeLessThan(11 * 60_000);
});
