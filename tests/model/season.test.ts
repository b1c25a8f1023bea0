import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { total_m } from '#lib/model/column.ts';
import { runSeason, type SeasonDay, type SeasonInput } from '#lib/model/season.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import { measuredReading } from '../support/measured-reading.ts';
import { INVENTED_LAKE } from '../support/seeded-winter.ts';
import { weatherDay } from '../support/weather-day.ts';

const FREEZE_UP = '2026-12-01';

test('the state on a day is that at its start: open water on the day of freeze-up', () => {
	const [first, second] = season(frost(3));
	expect(first?.column.clear_m).toBe(0);
	expect(first?.fdd_degCd).toBe(0);
	expect(first?.freezing_degCd).toBe(10);
	expect(second?.fdd_degCd).toBe(10);
	expect(second?.column.clear_m).toBeGreaterThan(0.01);
});

test('the day after the last weather is stated, and none past it', () => {
	const days = season(frost(5));
	expect(days.map((day) => day.on)).toEqual([0, 1, 2, 3, 4, 5].map((i) => addDays(FREEZE_UP, i)));
	expect(days.at(-1)).toMatchObject({ source: 'gap', air_degC: null, freezing_degCd: 0 });
});

test('the season ends on the day asked for', () => {
	expect(season(frost(9), { until: addDays(FREEZE_UP, 3) }).at(-1)?.on).toBe(addDays(FREEZE_UP, 3));
	expect(season(frost(9), { until: addDays(FREEZE_UP, -1) })).toEqual([]);
});

test('weather that ends before freeze-up says nothing of the ice', () => {
	expect(season([weatherDay('2026-11-20', { air_degC: -5 })])).toEqual([]);
	expect(season([])).toEqual([]);
	expect(season([weatherDay('2026-11-30', { air_degC: -5 })])).toHaveLength(1);
});

test('weather before freeze-up does not count', () => {
	const before = weatherDay(addDays(FREEZE_UP, -1), { air_degC: -30 });
	expect(season([before, ...frost(4)])).toEqual(season(frost(4)));
});

test('temperature alone does not give the bare-ice thickness', () => {
	const airOnly = frost(60).map((day) => ({
		...day,
		precipitation_kg_m2: null,
		snowfall_kg_m2: null
	}));
	const unknown = season(airOnly).at(-1);
	const bare = season(frost(60)).at(-1);
	expect(unknown?.snowKnown).toBe(false);
	expect(bare?.snowKnown).toBe(true);
	expect(unknown?.column.snow_m).toBeGreaterThan(0.03);
	expect(thickness_m(unknown)).toBeLessThan(0.75 * thickness_m(bare));
});

test('snow is known again after its depth was measured on the ice', () => {
	const airOnly = frost(20).map((day, i) => (i < 5 ? { ...day, precipitation_kg_m2: null } : day));
	const reading = measuredReading('r', addDays(FREEZE_UP, 8), { snow_m: 0.1 });
	const days = season(airOnly, { readings: [reading] });
	expect(days.map((day) => day.snowKnown)).toEqual(days.map((_, i) => i === 0 || i >= 8));
});

test('a gap in the temperature makes no ice, may thaw as its neighbours do, and is counted', () => {
	const weather = [...frost(10), ...warm(10, 2), ...warm(18, 2)];
	const days = season(weather);
	const [before, after] = [days[12], days[18]];
	expect(thickness_m(after)).toBeLessThan(thickness_m(before));
	expect(after?.gapDays).toBe(6);
	expect(after?.tdd_degCd).toBe(before?.tdd_degCd);
	expect(days[14]).toMatchObject({ source: 'gap', air_degC: null, aboveFreezing_h: null });
});

test('a reading puts the state where it was measured and resets the counts', () => {
	const weather = frost(20).filter((_, i) => i !== 3);
	const reading = measuredReading('drilled', addDays(FREEZE_UP, 10), { total_m: 0.12 });
	const days = season(weather, { readings: [reading] });
	expect(days[9]).toMatchObject({ gapDays: 1, daysSinceAnchor: null, anchoredBy: [] });
	expect(days[10]).toMatchObject({ gapDays: 0, daysSinceAnchor: 0, anchoredBy: ['drilled'] });
	expect(thickness_m(days[10])).toBeCloseTo(0.12, 12);
	expect(days[12]?.daysSinceAnchor).toBe(2);
	expect(thickness_m(days[12])).toBeGreaterThan(0.12);
});

test('a site that opened again starts anew when it has refrozen', () => {
	const on = addDays(FREEZE_UP, 6);
	const refrozeOn = addDays(FREEZE_UP, 9);
	const days = season(frost(15), { events: [{ kind: 'reopened', on, refrozeOn }] });
	expect(thickness_m(days[5])).toBeGreaterThan(0.1);
	expect([6, 7, 8, 9].map((i) => thickness_m(days[i]))).toEqual([0, 0, 0, 0]);
	expect(days[9]?.fdd_degCd).toBe(0);
	expect(days[11]?.fdd_degCd).toBe(days[2]?.fdd_degCd);
	expect(thickness_m(days[11])).toBeCloseTo(thickness_m(days[2]), 2.5);
});

test('a site that opened again without a day of refreezing stays open', () => {
	const events = [{ kind: 'reopened' as const, on: addDays(FREEZE_UP, 6), refrozeOn: null }];
	expect(thickness_m(season(frost(15), { events }).at(-1))).toBe(0);
});

test('hours above freezing come from the record where it has them, else from the sine', () => {
	const hourly = weatherDay(FREEZE_UP, {
		air_degC: -1,
		freezing_degCd: 3,
		thawing_degCd: 2,
		aboveFreezing_h: 9
	});
	expect(season([hourly])[0]).toMatchObject({
		freezing_degCd: 3,
		thawing_degCd: 2,
		aboveFreezing_h: 9
	});
	const daily = weatherDay(FREEZE_UP, { air_degC: 0, min_degC: -5, max_degC: 5 });
	expect(season([daily])[0]?.aboveFreezing_h).toBeCloseTo(12, 9);
});

test('the sun is that of the date across the turn of the year', () => {
	const days = season(frost(40));
	const sun = (on: string) => days.find((day) => day.on === on)?.sun_W_m2 ?? NaN;
	expect(sun('2026-12-21')).toBeLessThan(sun('2026-12-01'));
	expect(sun('2027-01-05')).toBeGreaterThan(sun('2026-12-31'));
	expect(sun('2027-01-05') - sun('2026-12-31')).toBeLessThan(5);
});

test('melt since the thickest day is counted, and ends with new growth', () => {
	const days = season([...frost(20), ...warm(20, 5), ...frostFrom(25, 20)]);
	expect(days[20]?.meltSincePeak_m).toBe(0);
	expect(days[25]?.meltSincePeak_m).toBeGreaterThan(0.01);
	expect(days.at(-1)?.meltSincePeak_m).toBe(0);
});

test('misuse throws and names what is wrong', () => {
	const wrong = (change: Partial<SeasonInput>) => () => season(frost(2), change);
	expect(wrong({ freezeUpOn: '2026-02-30' })).toThrow('freezeUpOn must be a day');
	expect(wrong({ lake: { ...INVENTED_LAKE, latitude: NaN } })).toThrow('latitude must be');
	expect(wrong({ lake: { ...INVENTED_LAKE, area_km2: -1 } })).toThrow('area_km2 must not');
	expect(wrong({ weather: frost(3).toReversed() })).toThrow('weather must be sorted');
	expect(wrong({ weather: [weatherDay(FREEZE_UP, { air_degC: NaN })] })).toThrow(
		`air_degC of ${FREEZE_UP} must be a finite number, got NaN`
	);
	expect(wrong({ weather: [weatherDay(FREEZE_UP, { precipitation_kg_m2: -2 })] })).toThrow(
		'must not be negative, got -2'
	);
	expect(wrong({ readings: [measuredReading('x', FREEZE_UP, { total_m: -0.1 })] })).toThrow(
		'total_m of reading x'
	);
	expect(wrong({ stepsPerDay: 0 })).toThrow('stepsPerDay');
});

function season(weather: WeatherDay[], more: Partial<SeasonInput> = {}): SeasonDay[] {
	const input = { lake: INVENTED_LAKE, freezeUpOn: FREEZE_UP, until: '2027-06-30', weather };
	return runSeason({ ...input, ...more });
}

/** Days of 10 °C of frost without snow. */
function frost(days: number): WeatherDay[] {
	return frostFrom(0, days);
}

function frostFrom(first: number, days: number): WeatherDay[] {
	return daysOf(first, days, -10);
}

function warm(first: number, days: number): WeatherDay[] {
	return daysOf(first, days, 4);
}

function daysOf(first: number, days: number, air_degC: number): WeatherDay[] {
	return Array.from({ length: days }, (_, i) =>
		weatherDay(addDays(FREEZE_UP, first + i), { air_degC, precipitation_kg_m2: 0 })
	);
}

function thickness_m(day: SeasonDay | undefined): number {
	return day === undefined ? NaN : total_m(day.column);
}
