import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import type { Forecast, ForecastDay } from '#lib/model/forecast.ts';
import { floodAhead } from '#lib/model/flood-ahead.ts';
import { thawAhead } from '#lib/model/telling/thaw-ahead.ts';
import { inventedFuture } from '../../support/invented-future.ts';

/** As of 26 January; a warm spell from the seventh day ahead on, spring from March on. */
const forecast = inventedFuture();
const today = forecast.asOf;

test('a warm spell within a week of weather forecast is told with its first day', () => {
	expect(thawAhead(forecast, today)).toEqual({ from: addDays(today, 6), chance: 0.7 });
});

test('the same spell is not told a week and more before it, nor from past winters', () => {
	expect(thawAhead(forecast, addDays(today, -2))).toBeNull();
	const climate = asClimate(forecast);
	expect(thawAhead(climate, today)).toBeNull();
});

test('a chance of less than three in ten is not told', () => {
	expect(thawAhead(withChance(forecast, 0.29), today)).toBeNull();
	expect(thawAhead(withChance(forecast, 0.3), today)).toMatchObject({ chance: 0.3 });
});

test('no thaw is ahead while one is there', () => {
	const loads = forecast.loads.map((load) => ({
		...load,
		days: load.days.map((day) => (day.on === today ? { ...day, pThaw: 1 } : day))
	}));
	expect(thawAhead({ ...forecast, loads }, today)).toBeNull();
});

test('new slush by the median is a flood ahead', () => {
	const wet = changed(forecast, 3, { slush_m: all(0.011) });
	expect(floodAhead(wet, 0.5, today)).toEqual({ from: addDays(today, 3), floodsWith_m: 0.5 });
	expect(floodAhead(changed(forecast, 3, { slush_m: all(0.009) }), 0.5, today)).toBeNull();
});

test('slush that is there already is no flood ahead', () => {
	const days = forecast.days.map((day) => ({ ...day, slush_m: all(0.05) }));
	expect(floodAhead({ ...forecast, days }, 0.5, today)).toBeNull();
});

test('more snow than the sheet floats is a flood ahead', () => {
	const now_m = forecast.days.find(({ on }) => on === today)?.snow_m.p50 ?? 0;
	const snowed = changed(forecast, 2, { snow_m: all(now_m + 0.06) });
	expect(floodAhead(snowed, 0.05, today)?.from).toBe(addDays(today, 2));
	expect(floodAhead(snowed, 0.07, today)).toBeNull();
	expect(floodAhead(snowed, null, today)).toBeNull();
});

function all(value: number) {
	return { p05: value, p10: value, p50: value, p90: value, p95: value };
}

function changed(whole: Forecast, ahead_d: number, change: Partial<ForecastDay>): Forecast {
	const on = addDays(today, ahead_d);
	return { ...whole, days: whole.days.map((day) => (day.on === on ? { ...day, ...change } : day)) };
}

function asClimate(whole: Forecast): Forecast {
	const days = whole.days.map((day) =>
		day.source === 'forecast' ? { ...day, source: 'climate' as const } : day
	);
	return { ...whole, days };
}

function withChance(whole: Forecast, chance: number): Forecast {
	const loads = whole.loads.map((load) => ({
		...load,
		days: load.days.map((day) => ({ ...day, pThaw: day.on > today ? chance : 0 }))
	}));
	return { ...whole, loads };
}
