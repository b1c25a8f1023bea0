import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { meanOf } from '#lib/model/ensemble/kalman.ts';
import { runEnsemble, type EnsembleInput } from '#lib/model/ensemble/run.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { WeatherDay } from '#lib/model/weather.ts';

const FREEZE_UP = '2001-12-01';
const UNTIL = addDays(FREEZE_UP, 60);

function weather(change: (index: number) => Partial<WeatherDay> = () => ({})): WeatherDay[] {
	return Array.from({ length: 61 }, (_, index) => ({
		on: addDays(FREEZE_UP, index),
		source: 'observed' as const,
		air_degC: -9 + 4 * Math.sin(index / 3),
		min_degC: null,
		max_degC: null,
		freezing_degCd: null,
		thawing_degCd: null,
		aboveFreezing_h: null,
		precipitation_kg_m2: index % 6 === 0 ? 4 : 0,
		snowfall_kg_m2: null,
		landSnow_m: null,
		wind_m_s: null,
		...change(index)
	}));
}

function drilled(total_m: number, day = 40, more: Partial<Reading> = {}): Reading {
	const hole = { clear_m: null, white_m: null, snow_m: null, slush_m: null, freeboard_m: null };
	return {
		id: `reading-${day}`,
		on: addDays(FREEZE_UP, day),
		place: null,
		kind: 'measured',
		holes: [{ total_m, ...hole }],
		core: null,
		by: null,
		remark: null,
		...more
	};
}

function run(change: Partial<EnsembleInput> = {}, on = UNTIL) {
	let total_m = new Float64Array();
	let isAskedAbout = false;
	const input: EnsembleInput = {
		lake: {
			latitude: 46,
			longitude: 0,
			elevation_m: 300,
			area_km2: 1,
			meanDepth_m: 5,
			water: 'lake'
		},
		freezeUpOn: FREEZE_UP,
		freezeUpBy: null,
		until: UNTIL,
		weather: weather(),
		scenarios: [],
		events: [],
		readings: [],
		memory: null,
		members: 400,
		seed: 3,
		...change
	};
	runEnsemble(input, (day) => {
		if (day.on === on) total_m = day.holes.total_m.toSorted();
		isAskedAbout ||= day.recalibrations.some((each) => each.isAskedAbout);
	});
	return {
		total_m,
		isAskedAbout,
		median_m: at(total_m, 0.5),
		band_m: at(total_m, 0.95) - at(total_m, 0.05)
	};
}

function at(sorted: Float64Array, share: number): number {
	return sorted[Math.floor((sorted.length - 1) * share)] ?? NaN;
}

test('the same seed gives the same members, another one nearly the same median', () => {
	expect(run().total_m).toEqual(run().total_m);
	expect(Math.abs(run({ seed: 4 }).median_m - run().median_m)).toBeLessThan(0.015);
});

test('half the members say nearly the same', () => {
	expect(Math.abs(run({ members: 200 }).median_m - run().median_m)).toBeLessThan(0.015);
});

test('a reading moves the median to it and narrows the band', () => {
	const before = run();
	const thinner = run({ readings: [drilled(run({}, addDays(FREEZE_UP, 40)).median_m - 0.06)] });
	expect(thinner.median_m).toBeLessThan(before.median_m - 0.02);
	expect(thinner.band_m).toBeLessThan(before.band_m);
});

test('a mistyped two metres is asked about and moves little', () => {
	const mistyped = run({ readings: [drilled(2)] });
	expect(mistyped.isAskedAbout).toBe(true);
	expect(Math.abs(mistyped.median_m - run().median_m)).toBeLessThan(0.03);
});

test('a break-through is a fact about its place and moves nothing', () => {
	expect(run({ readings: [drilled(0.02, 40, { kind: 'wentThrough' })] }).total_m).toEqual(
		run().total_m
	);
});

test('unknown snow widens the band', () => {
	const unknown = weather(() => ({ precipitation_kg_m2: null }));
	expect(run({ weather: unknown }).band_m).toBeGreaterThan(run().band_m);
});

test('days without a temperature never thicken the estimate', () => {
	const gappy = weather((index) => (index >= 40 && index < 47 ? { air_degC: null } : {}));
	expect(run({ weather: gappy }).median_m).toBeLessThan(run().median_m);
});

test('a freeze-up known as between two days widens the band of young ice', () => {
	const young = addDays(FREEZE_UP, 10);
	const known = run({}, young);
	const spread = run({ freezeUpBy: addDays(FREEZE_UP, 6) }, young);
	expect(spread.band_m).toBeGreaterThan(known.band_m);
	expect(spread.median_m).toBeLessThan(known.median_m);
});

test('nothing is ever not a number, whatever is missing', () => {
	const holes = weather((index) => ({
		air_degC: index % 5 === 2 ? null : 3 - index / 4,
		precipitation_kg_m2: index % 3 === 0 ? null : 6
	}));
	expect([...run({ weather: holes }).total_m].every(Number.isFinite)).toBe(true);
	expect(meanOf(run({ weather: holes }).total_m)).toBeGreaterThan(0);
});
