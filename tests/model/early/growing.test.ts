import { expect, test } from 'vitest';
import { comingWeekend } from '#lib/model/early/weekend.ts';
import { pastBecause } from '#lib/model/early/phase.ts';
import { shareBelow } from '#lib/model/early/share-below.ts';
import { testDay } from '#lib/model/early/test-day.ts';
import { windyDays } from '#lib/model/early/wind.ts';
import type { ForecastDay, Quantiles } from '#lib/model/forecast.ts';
import { inventedDay } from '../../support/invented-view.ts';
import { weatherDay } from '../../support/weather-day.ts';

const quantiles = (p50: number): Quantiles => ({
	p05: 0.5 * p50,
	p10: 0.6 * p50,
	p50,
	p90: 1.4 * p50,
	p95: 1.5 * p50
});

test('the coming weekend is this one on a Saturday and the next one on a Sunday', () => {
	expect(comingWeekend('2026-11-25')).toEqual(['2026-11-28', '2026-11-29']);
	expect(comingWeekend('2026-11-28')).toEqual(['2026-11-28', '2026-11-29']);
	expect(comingWeekend('2026-11-29')).toEqual(['2026-12-05', '2026-12-06']);
	expect(comingWeekend('1969-12-30')).toEqual(['1970-01-03', '1970-01-04']);
});

test('the share below a limit is exact at the quantiles and goes no further than they do', () => {
	const day = quantiles(0.1);
	expect(shareBelow(day, 0.06)).toBeCloseTo(0.1, 9);
	expect(shareBelow(day, 0.1)).toBeCloseTo(0.5, 9);
	expect(shareBelow(day, 0.12)).toBeCloseTo(0.7, 9);
	expect(shareBelow(day, 0.01)).toBe(0.05);
	expect(shareBelow(day, 1)).toBe(0.95);
	expect(shareBelow({ ...day, p05: null }, 0.1)).toBeNull();
	expect(shareBelow(quantiles(0), 0.1)).toBe(0.95);
});

test('wind is spoken of on observed and forecast days, and never of climate', () => {
	const weather = [
		weatherDay('2026-11-20', { wind_m_s: 6 }),
		weatherDay('2026-11-21', { wind_m_s: 5.9 }),
		weatherDay('2026-11-22'),
		weatherDay('2026-11-23', { wind_m_s: 9, source: 'forecast' }),
		weatherDay('2026-11-24', { wind_m_s: 9, source: 'climate' })
	];
	expect(windyDays(weather, () => 0.4)).toEqual([
		{ on: '2026-11-20', wind_m_s: 6, source: 'observed', pThin: 0.4 },
		{ on: '2026-11-23', wind_m_s: 9, source: 'forecast', pThin: 0.4 }
	]);
});

function coming(p50: readonly number[]): ForecastDay[] {
	return p50.map((each, index) => ({
		...inventedDay(index),
		total_m: quantiles(each),
		effective_m: quantiles(each)
	}));
}

test('a test is worth the trip from the first even chance on that is no more likely a thaw', () => {
	const days = coming([0.06, 0.09, 0.1, 0.12]);
	const [, , third = '', fourth = ''] = days.map(({ on }) => on);
	expect(testDay(days, days[0]?.on ?? '', 0.1, { days: [] })).toBe(third);
	const thaw = { days: [{ on: third, pThickness: 0.5, pThaw: 0.5 }] };
	expect(testDay(days, days[0]?.on ?? '', 0.1, thaw)).toBe(fourth);
	expect(testDay(days, fourth, 0.1, { days: [] })).toBe(fourth);
	expect(testDay(days, days[0]?.on ?? '', 0.2, { days: [] })).toBeNull();
});

const load = (pThickness: number | null) => ({
	days: [{ on: '2026-11-27', pThickness, pThaw: 0 }]
});

test('the early season ends with ice-out, with all first loads likely, or with growth', () => {
	const asOf = '2026-11-27';
	const growing = { asOf, days: coming([0.1, 0.12, 0.15]) };
	expect(pastBecause(growing, [load(0.9), load(0.5)], null)).toBeNull();
	expect(pastBecause(growing, [load(0.9), load(0.95)], null)).toBe('firstLoadsLikely');
	expect(pastBecause(growing, [load(null)], asOf)).toBe('iceOut');
	const peaked = { asOf, days: coming([0.2, 0.2, 0.15]) };
	expect(pastBecause(peaked, [load(0.5)], null)).toBe('noMoreGrowth');
	expect(pastBecause({ asOf, days: coming([0.2]) }, [load(0.5)], null)).toBeNull();
});
