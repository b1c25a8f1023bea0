import { expect, test } from 'vitest';
import { usualRange_K } from '#lib/model/air-range.ts';
import { dayDegrees, splitBySine } from '#lib/model/degree-days.ts';
import { weatherDay } from '../support/weather-day.ts';

test('a day about freezing is half frost and half thaw', () => {
	const day = splitBySine(0, 10);
	expect(day.freezing_degCd).toBeCloseTo(5 / Math.PI, 12);
	expect(day.thawing_degCd).toBeCloseTo(5 / Math.PI, 12);
	expect(day.aboveFreezing_h).toBeCloseTo(12, 12);
});

test('a day wholly on one side of freezing keeps its mean', () => {
	expect(splitBySine(-7, 10)).toEqual({ freezing_degCd: 7, thawing_degCd: 0, aboveFreezing_h: 0 });
	expect(splitBySine(6, 10)).toEqual({ freezing_degCd: 0, thawing_degCd: 6, aboveFreezing_h: 24 });
	expect(splitBySine(0, 0)).toEqual({ freezing_degCd: 0, thawing_degCd: 0, aboveFreezing_h: 0 });
});

test('the split agrees with the sum over the hours of the same sine', () => {
	for (const mean of [-4, -1.5, 0.7, 3]) {
		const steps = Array.from({ length: 24_000 }, (_, i) =>
			Math.cos((2 * Math.PI * (i + 0.5)) / 24_000)
		);
		const air = steps.map((cosine) => mean + 5 * cosine);
		const thaw = air.reduce((sum, t) => sum + Math.max(0, t), 0) / air.length;
		const hours = (24 * air.filter((t) => t > 0).length) / air.length;
		const split = splitBySine(mean, 10);
		expect(split.thawing_degCd).toBeCloseTo(thaw, 4);
		expect(split.aboveFreezing_h).toBeCloseTo(hours, 1);
	}
});

test('days built from hours keep their sums', () => {
	const day = weatherDay('2027-01-10', {
		air_degC: -2,
		min_degC: -9,
		max_degC: 5,
		freezing_degCd: 3.5,
		thawing_degCd: 1.5,
		aboveFreezing_h: 8
	});
	expect(dayDegrees(day, 46)).toEqual({
		freezing_degCd: 3.5,
		thawing_degCd: 1.5,
		aboveFreezing_h: 8
	});
});

test('without extremes the usual range of month and latitude splits the day', () => {
	const day = weatherDay('2027-03-10', { air_degC: 0 });
	const range_K = usualRange_K(46, 3);
	expect(dayDegrees(day, 46)?.thawing_degCd).toBeCloseTo(range_K / 2 / Math.PI, 12);
	expect(range_K).toBeGreaterThan(usualRange_K(46, 1));
	expect(usualRange_K(46, 1)).toBeGreaterThan(usualRange_K(63, 1));
	expect(usualRange_K(80, 12)).toBe(6);
});

test('the middle of the extremes stands for a missing mean', () => {
	const day = weatherDay('2027-01-10', { min_degC: -20, max_degC: -10 });
	expect(dayDegrees(day, 46)?.freezing_degCd).toBe(15);
});

test('a day without any temperature has no degree-days', () => {
	expect(dayDegrees(weatherDay('2027-01-10', { max_degC: -3 }), 46)).toBeNull();
});
