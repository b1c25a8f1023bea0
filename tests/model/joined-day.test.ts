import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
	dayFromHours,
	type DayValues,
	type WeatherHour
} from '../../src/lib/model/hours-to-days.ts';
import { filledBy, joinedDay as joined, type OriginDay } from '../../src/lib/model/joined-day.ts';
import { observedDay as observed } from '../../src/lib/model/observed-day.ts';

const START_S = Date.UTC(2027, 0, 10) / 1000;
const SPAN = { on: '2027-01-10', start_s: START_S, end_s: START_S + 86_400 };

const observedDay = (hourly: DayValues | null, record: DayValues | null) =>
	observed(hourly, record, 61);
const joinedDay = (span: typeof SPAN, origins: readonly OriginDay[]) => joined(span, origins, 61);

function hour(index: number, values: Partial<WeatherHour> = {}): WeatherHour {
	return {
		at_s: START_S + index * 3600,
		air_degC: null,
		precipitation_kg_m2: null,
		snowfall_kg_m2: null,
		landSnow_m: null,
		wind_m_s: null,
		...values
	};
}

function hours(from: number, to: number, values: Partial<WeatherHour>): WeatherHour[] {
	return Array.from({ length: to - from }, (_, index) => hour(from + index, values));
}

function daily(values: Partial<DayValues>): DayValues {
	return {
		on: SPAN.on,
		air_degC: null,
		min_degC: null,
		max_degC: null,
		freezing_degCd: null,
		thawing_degCd: null,
		aboveFreezing_h: null,
		precipitation_kg_m2: null,
		snowfall_kg_m2: null,
		landSnow_m: null,
		wind_m_s: null,
		...values
	};
}

test('the more trusted temperature stands, whichever is the colder', () => {
	const warm = { hours: [], daily: daily({ air_degC: 2 }) };
	const cold = { hours: hours(0, 24, { air_degC: -9 }), daily: null };
	expect(joinedDay(SPAN, [warm, cold])?.air_degC).toBe(2);
	expect(joinedDay(SPAN, [cold, warm])?.air_degC).toBe(-9);
});

test('a trusted daily record brings its own range, not that of less trusted hours', () => {
	const trusted = { hours: [], daily: daily({ air_degC: -4 }) };
	const other = { hours: hours(0, 24, { air_degC: -9 }), daily: null };
	expect(joinedDay(SPAN, [trusted, other])).toMatchObject({
		air_degC: -4,
		min_degC: null,
		max_degC: null,
		freezing_degCd: null,
		aboveFreezing_h: null
	});
});

test('hours that the trusted origin lacks are filled from the next', () => {
	const trusted = { hours: hours(0, 12, { air_degC: -10 }), daily: null };
	const next = { hours: hours(0, 24, { air_degC: 2 }), daily: null };
	expect(joinedDay(SPAN, [trusted, next])).toMatchObject({
		air_degC: -4,
		min_degC: -10,
		max_degC: 2,
		aboveFreezing_h: 12
	});
});

test('a quantity that one does not know comes from the other', () => {
	const station = { hours: hours(0, 24, { air_degC: -6 }), daily: null };
	const model = { hours: [], daily: daily({ air_degC: 1, precipitation_kg_m2: 4, wind_m_s: 3 }) };
	expect(joinedDay(SPAN, [station, model])).toMatchObject({
		air_degC: -6,
		precipitation_kg_m2: 4,
		wind_m_s: 3
	});
});

test('what fell is one origin’s as a whole', () => {
	const dry = { hours: [], daily: daily({ air_degC: -6, precipitation_kg_m2: 0 }) };
	const snowy = { hours: [], daily: daily({ precipitation_kg_m2: 5, snowfall_kg_m2: 5 }) };
	expect(joinedDay(SPAN, [dry, snowy])).toMatchObject({
		precipitation_kg_m2: 0,
		snowfall_kg_m2: null
	});
	const noted = filledBy([hour(3, { precipitation_kg_m2: 0 })], [hour(3, { snowfall_kg_m2: 2 })]);
	expect(noted).toMatchObject([{ precipitation_kg_m2: 0, snowfall_kg_m2: null }]);
});

test('a day that nobody knows the temperature of keeps what is known', () => {
	const half = { hours: hours(0, 10, { air_degC: -6 }), daily: daily({ min_degC: -8 }) };
	expect(joinedDay(SPAN, [half, { hours: [], daily: null }])).toMatchObject({
		air_degC: null,
		min_degC: -8
	});
	expect(joinedDay(SPAN, [{ hours: [], daily: null }])).toBeNull();
	expect(joinedDay(SPAN, [])).toBeNull();
});

const amount = fc.option(fc.integer({ min: 0, max: 90 }).map((n) => n / 10));
const air = fc.option(fc.integer({ min: -400, max: 200 }).map((n) => n / 10));
const someHours = fc
	.uniqueArray(fc.integer({ min: 0, max: 23 }), { maxLength: 24 })
	.chain((which) =>
		fc.tuple(
			...which
				.toSorted((a, b) => a - b)
				.map((index) =>
					fc.record({ air_degC: air, precipitation_kg_m2: amount }).map((v) => hour(index, v))
				)
		)
	);
const someDaily = fc.option(
	fc.record({ air_degC: air, precipitation_kg_m2: amount, landSnow_m: amount }).map(daily)
);

test('one origin alone says what it always said', () => {
	fc.assert(
		fc.property(someHours, someDaily, (own, record) => {
			const hourly = own.length > 0 ? dayFromHours(SPAN, own) : null;
			expect(joinedDay(SPAN, [{ hours: own, daily: record }])).toEqual(observedDay(hourly, record));
		}),
		{ seed: 41, numRuns: 500 }
	);
});

test('a less trusted origin changes nothing that the first knows', () => {
	fc.assert(
		fc.property(someHours, someDaily, someHours, someDaily, (own, record, others, other) => {
			const first = { hours: own, daily: record };
			const alone = joinedDay(SPAN, [first]);
			const both = joinedDay(SPAN, [first, { hours: others, daily: other }]);
			if (alone?.air_degC != null) expect(both).toMatchObject({ air_degC: alone.air_degC });
			if (alone?.precipitation_kg_m2 != null)
				expect(both).toMatchObject({ precipitation_kg_m2: alone.precipitation_kg_m2 });
		}),
		{ seed: 42, numRuns: 500 }
	);
});

test('warm hours that were seen of a day count in the daily record that stands in for it', () => {
	const trusted = { hours: hours(8, 18, { air_degC: 2 }), daily: null };
	const other = { hours: [], daily: daily({ air_degC: -3, min_degC: -5, max_degC: -1 }) };
	expect(joinedDay(SPAN, [trusted, other])).toMatchObject({ air_degC: -3, aboveFreezing_h: 10 });
	expect(joinedDay(SPAN, [{ ...other, hours: trusted.hours }])?.aboveFreezing_h).toBe(10);
	const warmer = { hours: [], daily: daily({ air_degC: 4, min_degC: 1, max_degC: 6 }) };
	expect(joinedDay(SPAN, [trusted, warmer])?.aboveFreezing_h).toBeNull();
	expect(joinedDay(SPAN, [other, trusted])?.aboveFreezing_h).toBeNull();
	// A mean above freezing closes the ice; counted hours would not, though more of them were seen.
	const mild = { hours: [], daily: daily({ air_degC: 0.1, min_degC: -4, max_degC: 4 }) };
	const longer = { hours: hours(0, 18, { air_degC: 2 }), daily: null };
	expect(joinedDay(SPAN, [longer, mild])?.aboveFreezing_h).toBeNull();
});
