import { expect, test } from 'vitest';
import type { ForecastDay } from '#lib/model/forecast.ts';
import type { Leaving } from '#lib/model/leaving/leaving.ts';
import { siteFacts } from '#lib/model/places/site-facts.ts';
import { LOADS } from '../../support/invented-winter.ts';
import { inventedDay, inventedForecast, inventedLoad } from '../../support/invented-view.ts';

/** Days from 2026-11-27 on, with the effective thickness, thaw and source given. */
function forecast(
	days: [effective_m: number, tdd_degCd: number, source?: ForecastDay['source']][]
) {
	const loads = LOADS.map(({ id }) => inventedLoad({ id, bound_m: id === 'on-foot' ? 0.3 : 0.2 }));
	return inventedForecast({
		loads,
		asOf: '2026-12-31',
		days: days.map(([effective_m, tdd_degCd, source = 'observed'], index) => {
			const day = inventedDay(index);
			return { ...day, tdd_degCd, source, effective_m: { ...day.effective_m, p50: effective_m } };
		})
	});
}

test('the bound is that of vehicles', () => {
	expect(siteFacts(forecast([[0.3, 0]]), LOADS, '2026-11-27').bound_m).toBe(0.2);
	expect(siteFacts(null, LOADS, '2026-11-27').bound_m).toBeNull();
});

test('a loss is counted from the thickest day since, a gain is none', () => {
	const facts = siteFacts(
		forecast([
			[0.2, 0],
			[0.3, 0],
			[0.26, 0]
		]),
		LOADS,
		'2026-11-29'
	);
	expect(facts.lostSince_m('2026-11-27')).toBeCloseTo(0.04, 9);
	expect(facts.lostSince_m('2026-11-29')).toBe(0);
});

test('thaw is that of the days since', () => {
	const facts = siteFacts(
		forecast([
			[0.2, 1],
			[0.2, 3],
			[0.2, 3]
		]),
		LOADS,
		'2026-11-29'
	);
	expect(facts.hasThawedSince('2026-11-27')).toBe(true);
	expect(facts.hasThawedSince('2026-11-28')).toBe(false);
});

test('thaw of the day of asking itself is seen, in the sum of the next or in its last hours', () => {
	const days = forecast([
		[0.2, 1],
		[0.2, 1],
		[0.2, 4]
	]);
	const seen = { ...days, asOf: '2026-11-28' };
	expect(siteFacts(seen, LOADS, '2026-11-29').hasThawedSince('2026-11-28')).toBe(true);
	const frost = { ...days, asOf: '2026-11-27' };
	expect(siteFacts(frost, LOADS, '2026-11-28').hasThawedSince('2026-11-27')).toBe(false);
	const warm = { ...frost, leaving: { warmLast_h: 2 } as Leaving };
	expect(siteFacts(warm, LOADS, '2026-11-28').hasThawedSince('2026-11-27')).toBe(true);
});

test('ice that has gone since counts as thawed, though the sum of thaw begins anew', () => {
	const days = forecast([
		[0.2, 5],
		[0, 0],
		[0.1, 5]
	]);
	const facts = siteFacts(days, LOADS, '2026-11-29');
	expect(facts.hasThawedSince('2026-11-27')).toBe(true);
	expect(facts.hasThawedSince('2026-11-29')).toBe(false);
});

test('days that nobody reported are gaps, and so are those after the last weather', () => {
	const known = forecast([
		[0.2, 0],
		[0.2, 0, 'gap'],
		[0.2, 0]
	]);
	expect(siteFacts(known, LOADS, '2026-11-30').gapDaysSince('2026-11-27')).toBe(1);
	expect(siteFacts(known, LOADS, '2026-11-30').gapDaysSince('2026-11-29')).toBe(0);
	expect(siteFacts(known, LOADS, '2026-12-03').gapDaysSince('2026-11-29')).toBe(3);
	expect(siteFacts(null, LOADS, '2026-12-03').gapDaysSince('2026-12-03')).toBe(0);
	expect(siteFacts(null, LOADS, '2026-12-03').gapDaysSince('2026-12-01')).toBe(2);
});

test('days past the day of asking tell nothing: they have not been', () => {
	const coming = {
		...forecast([
			[0.3, 0],
			[0.3, 0],
			[0.3, 0],
			[0.1, 9]
		]),
		asOf: '2026-11-28'
	};
	const facts = siteFacts(coming, LOADS, '2026-11-29');
	expect(facts.lostSince_m('2026-11-27')).toBe(0);
	expect(facts.hasThawedSince('2026-11-27')).toBe(false);
	expect(facts.gapDaysSince('2026-11-27')).toBe(0);
});
