import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { total_m } from '#lib/model/column.ts';
import type { LakeFacts } from '#lib/model/lake.ts';
import { parametersFor } from '#lib/model/parameters.ts';
import type { Reading } from '#lib/model/reading.ts';
import { runSeason, type SeasonDay } from '#lib/model/season.ts';
import type { SiteEvent } from '#lib/model/site-winter.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import { measuredReading } from '../support/measured-reading.ts';
import { INVENTED_LAKE } from '../support/seeded-winter.ts';
import { weatherDay } from '../support/weather-day.ts';

const FREEZE_UP = '2026-11-20';
const RUNS = { numRuns: 200, seed: 20261120 };

/** Neither sun nor flooding: frost, snow and conduction alone. */
const DRY = { ...parametersFor(INVENTED_LAKE), cloudFraction: 0, flooding_d: 1e12 };

const maybe = (value: fc.Arbitrary<number>): fc.Arbitrary<number | null> =>
	fc.option(value, { nil: null, freq: 4 });
const real = (min: number, max: number): fc.Arbitrary<number> =>
	fc.double({ min, max, noNaN: true });

/** Days of any weather at all, a third of them unreported. */
const anyWeather = fc
	.array(
		fc.option(
			fc.record({
				air_degC: maybe(real(-50, 30)),
				min_degC: maybe(real(-60, 25)),
				max_degC: maybe(real(-45, 40)),
				precipitation_kg_m2: maybe(real(0, 80)),
				snowfall_kg_m2: maybe(real(0, 60)),
				landSnow_m: maybe(real(0, 3))
			}),
			{ nil: null, freq: 3 }
		),
		{ minLength: 1, maxLength: 120 }
	)
	.map((days) =>
		days.flatMap((known, i) => (known ? [weatherDay(addDays(FREEZE_UP, i), known)] : []))
	);

const anyLake: fc.Arbitrary<LakeFacts> = fc.record({
	latitude: real(-90, 90),
	longitude: real(-180, 180),
	elevation_m: maybe(real(-400, 6000)),
	area_km2: maybe(real(0, 80000)),
	meanDepth_m: maybe(real(0, 1600)),
	water: fc.constantFrom('lake', 'river', 'reservoir')
});

const anyEvent: fc.Arbitrary<SiteEvent> = fc.integer({ min: 0, max: 60 }).chain((i) => {
	const on = addDays(FREEZE_UP, i);
	return fc.oneof(
		fc.record({ kind: fc.constant('cleared' as const), on: fc.constant(on), snow_m: real(0, 1) }),
		fc.record({
			kind: fc.constant('packed' as const),
			on: fc.constant(on),
			density_kg_m3: maybe(real(50, 700))
		}),
		fc.record({ kind: fc.constant('pumped' as const), on: fc.constant(on), water_m: real(0, 0.5) }),
		fc.record({
			kind: fc.constant('reopened' as const),
			on: fc.constant(on),
			refrozeOn: fc.constantFrom(null, addDays(on, 3))
		})
	);
});

const anyReading: fc.Arbitrary<Reading> = fc
	.record({
		day: fc.integer({ min: 0, max: 60 }),
		kind: fc.constantFrom('measured', 'atLeast', 'wentThrough'),
		core: fc.constantFrom(null, 'sound', 'wet', 'candled'),
		total_m: maybe(real(0, 2)),
		clear_m: maybe(real(0, 2)),
		white_m: maybe(real(0, 1)),
		snow_m: maybe(real(0, 1)),
		slush_m: maybe(real(0, 0.5))
	})
	.map(({ day, kind, core, ...hole }) => ({
		...measuredReading('any', addDays(FREEZE_UP, day), hole),
		kind,
		core
	}));

test('no layer is ever negative or not a number, whatever the weather, events and readings', () => {
	const input = [anyLake, anyWeather, fc.array(anyEvent), fc.array(anyReading)] as const;
	fc.assert(
		fc.property(...input, (lake, weather, events, readings) => {
			for (const day of season(weather, { lake, events, readings })) expectSound(day);
		}),
		RUNS
	);
});

test('more frost under the same snow never makes a thinner sheet, without flooding', () => {
	const means = fc.array(real(-30, 0), { minLength: 5, maxLength: 90 });
	fc.assert(
		fc.property(means, real(0, 10), real(0, 3), (days, further_degCd, snow) => {
			const usual = frosts(days, snow);
			const colder = usual.map((day) => ({
				...day,
				freezing_degCd: (day.freezing_degCd ?? 0) + further_degCd
			}));
			const [thin, thick] = [usual, colder].map((weather) => season(weather, { parameters: DRY }));
			expect(last_m(thick ?? [])).toBeGreaterThanOrEqual(last_m(thin ?? []) - 1e-9);
		}),
		RUNS
	);
});

test('growth never rises with the depth of the snow, without flooding', () => {
	const means = fc.array(real(-30, 0), { minLength: 5, maxLength: 90 });
	fc.assert(
		fc.property(means, real(0, 4), real(0, 4), (days, snow, further) => {
			const thin = season(frosts(days, snow), { parameters: DRY });
			const deep = season(frosts(days, snow + further), { parameters: DRY });
			expect(last_m(deep)).toBeLessThanOrEqual(last_m(thin) + 1e-9);
		}),
		RUNS
	);
});

test('a day without temperature never makes ice', () => {
	fc.assert(
		fc.property(anyWeather, fc.integer({ min: 0, max: 119 }), (weather, at) => {
			const gapped = weather.map((day, i) => (i === at % weather.length ? unknownAir(day) : day));
			const days = season(gapped);
			const index = days.findIndex((day) => day.on === gapped[at % gapped.length]?.on);
			const [before, after] = [days[index], days[index + 1]];
			if (before === undefined || after === undefined) return;
			expect(before.freezing_degCd).toBe(0);
			expect(total_m(after.column)).toBeLessThanOrEqual(total_m(before.column) + 1e-12);
		}),
		RUNS
	);
});

test('frost and thaw of a day differ by its mean', () => {
	fc.assert(
		fc.property(real(-40, 30), fc.option(real(0, 30), { nil: null }), (air_degC, range_K) => {
			const half = range_K === null ? null : range_K / 2;
			const known = half === null ? {} : { min_degC: air_degC - half, max_degC: air_degC + half };
			const [day] = season([weatherDay(FREEZE_UP, { air_degC, ...known })]);
			expect((day?.thawing_degCd ?? NaN) - (day?.freezing_degCd ?? NaN)).toBeCloseTo(air_degC, 9);
			expect(day?.freezing_degCd).toBeGreaterThanOrEqual(0);
			expect(day?.thawing_degCd).toBeGreaterThanOrEqual(0);
			expect(day?.aboveFreezing_h).toBeGreaterThanOrEqual(0);
			expect(day?.aboveFreezing_h).toBeLessThanOrEqual(24);
		}),
		RUNS
	);
});

function season(
	weather: readonly WeatherDay[],
	more: Partial<Parameters<typeof runSeason>[0]> = {}
): SeasonDay[] {
	const input = { lake: INVENTED_LAKE, freezeUpOn: FREEZE_UP, until: '2027-06-30', weather };
	return runSeason({ ...input, ...more });
}

function frosts(means: readonly number[], snow_kg_m2: number): WeatherDay[] {
	return means.map((mean, i) =>
		weatherDay(addDays(FREEZE_UP, i), {
			air_degC: mean,
			freezing_degCd: -mean,
			thawing_degCd: 0,
			aboveFreezing_h: 0,
			precipitation_kg_m2: snow_kg_m2,
			snowfall_kg_m2: snow_kg_m2
		})
	);
}

function unknownAir(day: WeatherDay): WeatherDay {
	return { ...day, air_degC: null, min_degC: null, max_degC: null };
}

function last_m(days: readonly SeasonDay[]): number {
	const last = days.at(-1);
	return last === undefined ? 0 : total_m(last.column);
}

function expectSound(day: SeasonDay): void {
	for (const [name, value] of Object.entries({ ...day.column, fdd: day.fdd_degCd })) {
		expect(Number.isFinite(value), `${name} on ${day.on}`).toBe(true);
		expect(value, `${name} on ${day.on}`).toBeGreaterThanOrEqual(0);
	}
	expect(day.column.liquidFraction).toBeLessThanOrEqual(1);
	expect(day.sun_W_m2).toBeGreaterThanOrEqual(0);
	expect(day.meltSincePeak_m).toBeGreaterThanOrEqual(0);
}
