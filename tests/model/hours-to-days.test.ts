import { expect, test } from 'vitest';
import { dayFromHours, type WeatherHour } from '../../src/lib/model/hours-to-days.ts';

const START_s = Date.parse('2027-01-10T00:00:00Z') / 1000;

function span(hours = 24) {
	return { on: '2027-01-10', start_s: START_s, end_s: START_s + hours * 3600 };
}

function hour(index: number, values: Partial<WeatherHour> = {}): WeatherHour {
	const unknown = {
		air_degC: null,
		precipitation_kg_m2: null,
		snowfall_kg_m2: null,
		landSnow_m: null,
		wind_m_s: null
	};
	return { at_s: START_s + index * 3600, ...unknown, ...values };
}

function hours(count: number, air_degC: (index: number) => number): WeatherHour[] {
	return Array.from({ length: count }, (_, index) => hour(index, { air_degC: air_degC(index) }));
}

test('a day of hours has its mean, range, degree-days and hours above freezing', () => {
	const day = dayFromHours(
		span(),
		hours(24, (index) => (index < 6 ? 4 : -8))
	);
	expect(day).toMatchObject({ on: '2027-01-10', air_degC: -5, min_degC: -8, max_degC: 4 });
	expect(day.thawing_degCd).toBeCloseTo(1, 12);
	expect(day.freezing_degCd).toBeCloseTo(6, 12);
	expect(day.aboveFreezing_h).toBe(6);
});

test('degree-days of a day differ by its mean', () => {
	const day = dayFromHours(
		span(),
		hours(24, (index) => 7 * Math.sin(index) - 1)
	);
	expect((day.thawing_degCd ?? NaN) - (day.freezing_degCd ?? NaN)).toBeCloseTo(
		day.air_degC ?? NaN,
		12
	);
});

test('the order of the hours and hours of other days change nothing', () => {
	const inOrder = hours(24, (index) => index - 12);
	const others = [hour(-1, { air_degC: 30 }), hour(24, { air_degC: 30 })];
	expect(dayFromHours(span(), [...others, ...inOrder.toReversed()])).toEqual(
		dayFromHours(span(), inOrder)
	);
});

test('twenty hours make a temperature, nineteen do not', () => {
	expect(
		dayFromHours(
			span(),
			hours(20, () => -5)
		).air_degC
	).toBe(-5);
	expect(
		dayFromHours(
			span(),
			hours(19, () => -5)
		)
	).toMatchObject({
		air_degC: null,
		min_degC: null,
		max_degC: null,
		freezing_degCd: null,
		thawing_degCd: null,
		aboveFreezing_h: null
	});
});

test('missing hours of a known day are taken to be like its others', () => {
	const day = dayFromHours(
		span(),
		hours(20, (index) => (index < 5 ? 2 : -4))
	);
	expect(day.freezing_degCd).toBeCloseTo(3, 12);
	expect(day.thawing_degCd).toBeCloseTo(0.5, 12);
	expect(day.aboveFreezing_h).toBeCloseTo(6, 12);
});

test('a temperature every three hours is complete, every four hours is not', () => {
	const every = (step: number) => hours(24, () => -3).filter((_, index) => index % step === 1);
	expect(dayFromHours(span(), every(3)).freezing_degCd).toBeCloseTo(3, 12);
	expect(dayFromHours(span(), every(4)).freezing_degCd).toBeNull();
});

test('the days of a clock change count their own hours', () => {
	const short = dayFromHours(
		span(23),
		hours(23, () => -10)
	);
	const long = dayFromHours(
		span(25),
		hours(25, () => 10)
	);
	expect(short.freezing_degCd).toBeCloseTo((10 * 23) / 24, 12);
	expect(long.thawing_degCd).toBeCloseTo((10 * 25) / 24, 12);
	expect(long.aboveFreezing_h).toBe(24);
});

test('precipitation is unknown, not zero, when more than four hours are missing', () => {
	const rain = (count: number) =>
		Array.from({ length: count }, (_, index) => hour(index, { precipitation_kg_m2: 0.5 }));
	expect(dayFromHours(span(), rain(24)).precipitation_kg_m2).toBeCloseTo(12, 12);
	expect(dayFromHours(span(), rain(20)).precipitation_kg_m2).toBeCloseTo(12, 12);
	expect(dayFromHours(span(), rain(19)).precipitation_kg_m2).toBeNull();
	expect(dayFromHours(span(), rain(24)).snowfall_kg_m2).toBeNull();
});

test('snow on land is the last one known, wind the mean', () => {
	const day = dayFromHours(span(), [
		hour(6, { landSnow_m: 0.1, wind_m_s: 2 }),
		hour(18, { landSnow_m: 0.3, wind_m_s: 4 })
	]);
	expect(day).toMatchObject({ landSnow_m: 0.3, wind_m_s: 3, air_degC: null });
});

test('a day without hours is unknown in everything', () => {
	expect(Object.values(dayFromHours(span(), [])).filter((value) => value !== null)).toEqual([
		'2027-01-10'
	]);
});

test('a day that lacks too many hours keeps those seen above freezing, and no frost', () => {
	const warm = dayFromHours(
		span(),
		hours(14, (index) => (index < 5 ? -2 : 3))
	);
	expect(warm).toMatchObject({ air_degC: null, freezing_degCd: null, aboveFreezing_h: 9 });
	const cold = dayFromHours(
		span(),
		hours(14, () => -2)
	);
	expect(cold).toMatchObject({ air_degC: null, freezing_degCd: null, aboveFreezing_h: null });
});
