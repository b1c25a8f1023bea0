import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { scenarios, type ScenarioInput } from '#lib/model/ensemble/scenarios.ts';
import { usualAir_degC } from '#lib/model/ensemble/usual-climate.ts';
import {
	airOf,
	inventedWeather,
	lagCorrelation,
	meanOf,
	spreadOf
} from '../../support/invented-climate.ts';
import { LAKE } from '../../support/invented-winter.ts';
import { weatherDay } from '../../support/weather-day.ts';

const PAST = inventedWeather('2006-07-01', '2026-06-30');
const NOW = inventedWeather('2026-11-01', '2027-01-10', 5);
const FORECAST = Array.from({ length: 10 }, (_, index) =>
	weatherDay(addDays('2027-01-11', index), {
		source: 'forecast',
		air_degC: -6,
		min_degC: -10,
		max_degC: -3,
		precipitation_kg_m2: 2
	})
);

function futures(change: Partial<ScenarioInput> = {}) {
	return scenarios({
		lake: LAKE,
		known: [...NOW, ...FORECAST],
		past: [...PAST, ...NOW],
		asOf: '2027-01-10',
		until: '2027-06-30',
		count: 200,
		seed: 1,
		...change
	});
}

/** Temperatures of all scenarios, so many days ahead. */
function ahead(all: ReturnType<typeof futures>, lead_d: number): number[] {
	return all.map(({ days }) => airOf(days[lead_d - 1]));
}

test('every scenario tells every day after asOf, forecast first and climate after', () => {
	for (const { days } of futures({ count: 20 })) {
		expect(days).toHaveLength(171);
		expect(days[0]?.on).toBe('2027-01-11');
		expect(days.at(-1)?.on).toBe('2027-06-30');
		expect(days.slice(0, 10).every((day) => day.source === 'forecast')).toBe(true);
		expect(days.slice(10).every((day) => day.source === 'climate')).toBe(true);
	}
});

test('the same seed gives the same futures, another seed others', () => {
	expect(futures({ count: 30 })).toEqual(futures({ count: 30 }));
	expect(futures({ count: 30, seed: 2 })).not.toEqual(futures({ count: 30 }));
});

test('past winters are drawn equally often, and say which they are', () => {
	const counts = new Map<string, number>();
	for (const { from } of futures()) counts.set(from, (counts.get(from) ?? 0) + 1);
	expect(counts.size).toBe(20);
	expect(counts.get('past winter 2012-13')).toBe(10);
	expect([...counts.values()].every((count) => count === 10)).toBe(true);
});

test('the spread grows with every day of the forecast, about the forecast itself', () => {
	const all = futures({ count: 600 });
	const spreads = [1, 4, 7, 10].map((lead_d) => spreadOf(ahead(all, lead_d)));
	expect(spreads).toEqual(spreads.toSorted((a, b) => a - b));
	expect(spreads[0]).toBeCloseTo(1.875, 1);
	expect(spreads[3]).toBeCloseTo(5.81, 0);
	expect(meanOf(ahead(all, 1))).toBeCloseTo(-6, 1);
	expect(meanOf(ahead(all, 10))).toBeCloseTo(-6, 0);
});

test('an older forecast is told with more doubt', () => {
	const fresh = ahead(futures({ count: 600, issuedOn: '2027-01-11' }), 3);
	const old = ahead(futures({ count: 600, issuedOn: '2027-01-08' }), 3);
	expect(spreadOf(old)).toBeGreaterThan(spreadOf(fresh) + 0.8);
	expect(meanOf(old)).toBeCloseTo(-6, 0);
});

test('minimum and maximum move with the mean of a forecast day', () => {
	for (const { days } of futures({ count: 20 })) {
		const [day] = days;
		expect((day?.max_degC ?? 0) - airOf(day)).toBeCloseTo(3, 9);
		expect((day?.min_degC ?? 0) - airOf(day)).toBeCloseTo(-4, 9);
	}
});

test('a drawn future keeps the day to day course of its winter once the join has faded', () => {
	for (const { days, from } of futures({ count: 20 })) {
		const year = Number(from.slice(12, 16)) + 1;
		const start = PAST.findIndex((day) => day.on === `${year}-02-15`);
		const source = PAST.slice(start, start + 120).map(airOf);
		const first = days.findIndex((day) => day.on === '2027-02-15');
		const drawn = days.slice(first, first + 120).map(airOf);
		expect(lagCorrelation(drawn)).toBeCloseTo(lagCorrelation(source), 2);
		const offset_K = meanOf(drawn) - meanOf(source);
		expect(spreadOf(drawn.map((each, i) => each - (source[i] ?? 0) - offset_K))).toBeLessThan(0.1);
	}
});

test('no future begins climate with a jump', () => {
	const steps = (from: number) =>
		futures().map(({ days }) => Math.abs(airOf(days[from]) - airOf(days[from - 1])));
	const ordinary = PAST.slice(1).map((day, i) => Math.abs(airOf(day) - airOf(PAST[i])));
	expect(meanOf(steps(10))).toBeLessThan(1.5 * meanOf(ordinary));
	const unforecast = futures({ known: NOW });
	const last = airOf(NOW.at(-1));
	const first = unforecast.map(({ days }) => Math.abs(airOf(days[0]) - last));
	expect(meanOf(first)).toBeLessThan(1.5 * meanOf(ordinary));
});

test('far ahead the futures are those of the past winters: as warm, and as wide', () => {
	const march = (days: readonly { on: string; air_degC: number | null }[]) =>
		meanOf(days.flatMap((day) => (day.on.slice(5, 7) === '03' ? [day.air_degC ?? 0] : [])));
	const winters = Array.from({ length: 20 }, (_, i) =>
		march(PAST.filter((day) => day.on.startsWith(String(2007 + i))))
	);
	const drawn = futures().map(({ days }) => march(days));
	expect(meanOf(drawn)).toBeCloseTo(meanOf(winters), 0);
	expect(spreadOf(drawn)).toBeGreaterThan(spreadOf(winters));
	expect(spreadOf(drawn)).toBeLessThan(1.3 * spreadOf(winters) + 0.5);
});

test('without a past the usual climate stands in, wider than past winters', () => {
	const all = futures({ known: [], past: [] });
	expect(new Set(all.map(({ from }) => from))).toEqual(new Set(['usual climate']));
	const known = futures();
	const february = (each: (typeof all)[number]) => meanOf(each.days.slice(21, 49).map(airOf));
	expect(spreadOf(all.map(february))).toBeGreaterThan(1.5 * spreadOf(known.map(february)));
	const usual = meanOf((all[0]?.days ?? []).map((day) => usualAir_degC(LAKE, day.on)));
	expect(meanOf(all.flatMap(({ days }) => days.map(airOf)))).toBeCloseTo(usual, 0);
});

test('one stored winter is used for a third of the futures', () => {
	const all = futures({ past: PAST.filter((day) => day.on >= '2025-07-01'), count: 300 });
	expect(all.filter(({ from }) => from === 'past winter 2025-26')).toHaveLength(100);
	expect(all.filter(({ from }) => from === 'usual climate')).toHaveLength(200);
});

test('past winters whose records end early go on as the usual climate, each to the last day', () => {
	const short = PAST.filter(({ on }) => on.slice(5) >= '10-01' || on.slice(5) <= '04-10');
	const all = futures({ past: short, count: 200 });
	for (const { from, days } of all) {
		expect(from).toMatch(/^past winter .*, then usual climate$/);
		expect(days).toHaveLength(171);
		expect(days.every((day) => Number.isFinite(airOf(day)))).toBe(true);
	}
	const before = futures({ count: 200 });
	const march = (each: (typeof all)[number]) => each.days.slice(49, 80).map(airOf);
	expect(all.map(march)).toEqual(before.map(march));
	const june = (each: (typeof all)[number]) => meanOf(each.days.slice(141).map(airOf));
	expect(spreadOf(all.map(june))).toBeGreaterThan(spreadOf(before.map(june)));
});

test("another winter's snow depth on land is no snowfall at the join", () => {
	const deep = PAST.map((day) => ({ ...day, landSnow_m: 0.5, precipitation_kg_m2: null }));
	const known = [...NOW, ...FORECAST].map((day) => ({ ...day, landSnow_m: 0 }));
	for (const { days } of futures({ past: deep, known, count: 5 })) {
		expect(days[10]?.landSnow_m).toBeNull();
		expect(days[11]?.landSnow_m).toBe(0.5);
	}
});

test('what was observed after asOf changes nothing', () => {
	const later = inventedWeather('2027-01-11', '2027-02-20', 9);
	expect(futures({ known: [...NOW, ...later], count: 10 })).toEqual(
		futures({ known: NOW, count: 10 })
	);
});

test('nothing is NaN, and amounts are never negative, whatever is known', () => {
	fc.assert(
		fc.property(
			fc.record({
				latitude: fc.double({ min: -70, max: 75, noNaN: true }),
				longitude: fc.double({ min: -180, max: 180, noNaN: true }),
				seed: fc.integer(),
				winters: fc.integer({ min: 0, max: 4 }),
				hasForecast: fc.boolean(),
				missing: fc.integer({ min: 2, max: 30 })
			}),
			({ latitude, longitude, seed, winters, hasForecast, missing }) => {
				const lake = { ...LAKE, latitude, longitude, elevation_m: null };
				const past = PAST.filter((day) => day.on >= `${2026 - winters}-07-01`).map((day, i) =>
					i % missing === 0 ? { ...day, air_degC: null, precipitation_kg_m2: null } : day
				);
				const known = hasForecast ? [...NOW, ...FORECAST] : NOW;
				for (const { days } of futures({ lake, past, known, seed, count: 7 })) {
					expect(days).toHaveLength(171);
					for (const day of days) {
						expect(Number.isFinite(day.air_degC)).toBe(true);
						const { precipitation_kg_m2: all, snowfall_kg_m2: snow } = day;
						expect(all === null || all >= 0).toBe(true);
						expect(snow === null || (snow >= 0 && snow <= (all ?? snow) + 1e-9)).toBe(true);
					}
				}
			}
		),
		{ numRuns: 60, seed: 3 }
	);
});
