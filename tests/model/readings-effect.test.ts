import { expect, test } from 'vitest';
import { outlook, type OutlookInput } from '../../src/lib/model/outlook.ts';
import type { Reading } from '../../src/lib/model/reading.ts';
import { iceOn, readingsEffect, withReadings } from '../../src/lib/model/readings-effect.ts';
import { addDays } from '../../src/lib/model/calendar.ts';
import { since } from '../support/invented-since.ts';
import { asked, reading, weather } from '../support/invented-winter.ts';

const hole = (on: string, total_m: number): Reading => ({
	id: `waits-${on}-${total_m}`,
	on,
	place: null,
	kind: 'measured',
	holes: [
		{ total_m, clear_m: null, white_m: null, snow_m: null, slush_m: null, freeboard_m: null }
	],
	core: null,
	by: null,
	secondHand: false,
	remark: null
});

const DAYS = 60;

/** Sixty days of frost that were measured once, and a past from which days to come are told. */
function inventedOutlookInput(): OutlookInput {
	const frost = Array.from({ length: DAYS }, (_, index) => -6 - (index % 7));
	const last = addDays('2026-12-01', DAYS - 1);
	return asked(frost, {
		readings: [reading('2027-01-05', [0.24])],
		past: weather(
			'2025-12-01',
			Array.from({ length: 120 }, () => -5)
		),
		until: addDays(last, 30),
		since: since(addDays(last, 1))
	});
}

/** The whole run, from freeze-up, with nothing left out. */
function whole(input: OutlookInput, more: readonly Reading[]) {
	const answer = outlook(withReadings(input, more));
	return {
		ice: iceOn(answer, more.at(-1)?.on ?? ''),
		loads: answer?.forecast.loads.map(({ id, status, reason }) => ({ id, status, reason }))
	};
}

test('going on from the day before gives what the whole run gives, for one reading and for several', () => {
	const input = inventedOutlookInput();
	const { asOf } = input;
	const sets = [
		[hole(asOf, 0.3)],
		[hole(asOf, 0.3), hole(asOf, 0.34)],
		[hole(addDays(asOf, -5), 0.2), hole(asOf, 0.28)]
	];
	for (const more of sets) {
		const effect = readingsEffect(input, more);
		const wanted = whole(input, more);
		expect(wanted.ice).not.toBeNull();
		expect(effect?.ice?.after).toEqual(wanted.ice);
		expect(effect?.loads.map(({ id, after, reason }) => ({ id, status: after, reason }))).toEqual(
			wanted.loads
		);
	}
});

test('a thin hole lowers the estimate, and a thick one never lifts the bound above itself', () => {
	const input = inventedOutlookInput();
	const thin = readingsEffect(input, [hole(input.asOf, 0.08)]);
	expect(thin?.ice?.after.p50_m).toBeLessThan(thin?.ice?.before.p50_m ?? 0);
	expect(thin?.ice?.after.bound_m).toBeLessThanOrEqual(0.08 + 0.05);
});

test('a reading of a day whose weather is not in counts against the ice only', () => {
	const input = inventedOutlookInput();
	const since = input.since;
	expect(since).not.toBeNull();
	const thick = readingsEffect(input, [hole(addDays(input.asOf, 1), 2)]);
	expect(thick?.isAhead).toBe(true);
	expect(thick?.loads.map(({ before }) => before)).toEqual(thick?.loads.map(({ after }) => after));
});
