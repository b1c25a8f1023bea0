import { expect, test } from 'vitest';
import { addDays, daysBetween } from '#lib/model/calendar.ts';
import { earlyIceSteps, type EarlyIce } from '#lib/model/early/early-ice.ts';
import { outlook, type OutlookInput } from '#lib/model/outlook.ts';
import { finish } from '#lib/model/steps.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import { LAKE, LOADS, MINIMUMS, asked, reading, record } from '../../support/invented-winter.ts';
import { weatherDay } from '../../support/weather-day.ts';

const FREEZE_UP = '2026-12-01';
const AS_OF = '2026-12-06';

/** Two earlier winters and the autumn before this one, each a swing of the year, dry. */
function past(): WeatherDay[] {
	return [2024, 2025, 2026]
		.flatMap((year) =>
			Array.from({ length: year === 2026 ? 159 : 360 }, (_, index) => {
				const on = addDays(`${year}-07-01`, index);
				const air_degC = 4 + 14 * Math.cos((2 * Math.PI * (index - 15)) / 365);
				return weatherDay(on, { air_degC, precipitation_kg_m2: 0, snowfall_kg_m2: 0 });
			})
		)
		.filter(({ on }) => on <= AS_OF);
}

function ahead(snow_kg_m2: number): WeatherDay[] {
	return Array.from({ length: 8 }, (_, index) =>
		weatherDay(addDays(AS_OF, index + 1), {
			source: 'forecast',
			air_degC: -9,
			precipitation_kg_m2: snow_kg_m2,
			snowfall_kg_m2: snow_kg_m2,
			wind_m_s: index === 1 ? 8 : 3
		})
	);
}

function look(change: Partial<OutlookInput> = {}, snow_kg_m2 = 0): EarlyIce {
	const known = past().filter(({ on }) => on >= '2026-07-01');
	const input: OutlookInput = {
		...asked([], {
			members: 200,
			record: record({ freezeUpOn: FREEZE_UP }),
			weather: [...known, ...ahead(snow_kg_m2)],
			past: past(),
			forecastIssuedOn: AS_OF,
			loads: LOADS,
			asOf: AS_OF,
			until: '2027-06-30'
		}),
		...change
	};
	const earlier = ['2024-25', '2025-26'].map((winter) => ({
		...record({ freezeUpOn: `${winter.slice(0, 4)}-12-10` }),
		winter
	}));
	return finish(earlyIceSteps({ input, outlook: outlook(input), records: earlier }));
}

const unfrozen = { record: record({ freezeUpOn: null }) };

test('before freeze-up the cooling, the chances and the earlier freeze-ups are told', () => {
	const early = look(unfrozen);
	expect(early).toMatchObject({ phase: 'beforeFreezeUp', growth: null, now: AS_OF });
	expect(early.cooling?.to).toBe(AS_OF);
	expect(early.freezing?.earlier.map(({ winter }) => winter)).toEqual(['2024-25', '2025-26']);
	expect(early.freezing?.chances[0]?.on).toBe(AS_OF);
	const last = early.freezing?.chances.at(-1);
	expect(last?.pFrozen).toBeGreaterThan(0.9);
});

test('a colder forecast makes an earlier skim likelier', () => {
	const soon = addDays(AS_OF, 7);
	const chance = (air_degC: number) => {
		const known = past().filter(({ on }) => on >= '2026-07-01');
		const weather = [...known, ...ahead(0).map((day) => ({ ...day, air_degC }))];
		const { freezing } = look({ ...unfrozen, weather });
		return freezing?.chances.find(({ on }) => on === soon)?.pFrozen ?? NaN;
	};
	expect(chance(-15)).toBeGreaterThan(chance(0));
});

test('of a river no chance of a skim is told', () => {
	const lake = { ...asked([]).lake, water: 'river' as const };
	expect(look({ ...unfrozen, lake })).toMatchObject({ phase: 'beforeFreezeUp', freezing: null });
});

test('a young sheet has growth, frost to go, a weekend and a day for a test', () => {
	const { phase, growth } = look();
	expect(phase).toBe('growing');
	expect(growth?.growth_m_d).toBeGreaterThan(0);
	const onFoot = growth?.loads.find(({ id }) => id === 'on-foot') ?? growth?.loads[0];
	const toGo = onFoot?.frostToGo_degCd;
	expect(toGo?.estimate).toBeGreaterThan(0);
	expect(toGo?.bound).toBeGreaterThan(toGo?.estimate ?? 0);
	expect(onFoot?.weekend.map(({ on }) => on)).toEqual(['2026-12-12', '2026-12-13']);
	// Eight forecast days of -9 °C and the day of asking itself.
	expect(growth?.forecast).toMatchObject({ to: '2026-12-14' });
	expect(growth?.forecast?.frost_degCd).toBeGreaterThan(60);
	expect(growth?.forecast?.frost_degCd).toBeLessThan(95);
	expect(daysBetween(AS_OF, growth?.test?.on ?? '')).toBeGreaterThanOrEqual(0);
	expect(growth?.days).toHaveLength(17);
});

test('without snow in the forecast there is nothing to compare; with it the ice is thinner', () => {
	expect(look().growth?.snow).toBeNull();
	const snow = look({}, 3).growth?.snow;
	expect(snow).toMatchObject({ on: '2026-12-15', fall_kg_m2: 24 });
	expect(snow?.with.p50_m).toBeLessThan(snow?.without.p50_m ?? 0);
	expect(snow?.with.p10_m).toBeLessThanOrEqual(snow?.with.p50_m ?? 0);
});

test('lower bounds are those to go by: of vehicles the thinnest of five, by one thick hole none', () => {
	const thick = reading(AS_OF, [0.16]);
	const input = { readings: [thick] };
	const { growth } = look(input, 3);
	const toGo = (id: string) => growth?.loads.find((load) => load.id === id);
	const [onFoot, snowmobile] = [toGo('on-foot'), toGo('snowmobile')];
	const alike = { minimums: MINIMUMS.map((row) => ({ ...row, thickness_m: 0.15 })) };
	const same = look({ ...input, ...alike }).growth?.loads ?? [];
	const bound = (id: string) => same.find((load) => load.id === id)?.frostToGo_degCd?.bound ?? NaN;
	expect(onFoot?.base_m).toBeLessThan(snowmobile?.base_m ?? 0);
	expect(bound('snowmobile')).toBeGreaterThan(bound('on-foot') + 1);
	for (const { total_m, bound_m } of growth?.days ?? [])
		expect(bound_m).toBeLessThan((total_m.p10 ?? NaN) - 0.005);
	const snow = growth?.snow;
	for (const { p10_m, bound_m } of snow ? [snow.with, snow.without] : [])
		expect(bound_m).toBeLessThan(p10_m - 0.005);
	expect(snow).not.toBeNull();
});

test('more snow lying on it makes the sheet grow more slowly', () => {
	const rows = look().growth?.rates?.rows.map(({ growth_m_d }) => growth_m_d) ?? [];
	expect(rows).toHaveLength(3);
	expect(rows).toEqual(rows.toSorted((a, b) => b - a));
	expect(new Set(rows).size).toBe(3);
});

test('forecast wind over thin ice is told, and that none has been observed', () => {
	const { wind } = look();
	expect(wind).toMatchObject({ isForecast: true, isObserved: false });
	expect(wind.days.map(({ on, source }) => [on, source])).toEqual([['2026-12-08', 'forecast']]);
	expect(wind.days[0]?.pThin).toBeGreaterThan(0.05);
});

test('where the snow is not known no day for a test is named', () => {
	const weather = past().map((day) => ({
		...day,
		precipitation_kg_m2: null,
		snowfall_kg_m2: null
	}));
	const { growth } = look({ weather: weather.filter(({ on }) => on >= '2026-07-01') });
	expect(growth?.snowKnown).toBe(false);
	expect(growth?.test).toBeNull();
	expect(growth?.loads.every(({ expectedFrom }) => expectedFrom === null)).toBe(true);
});

test('after ice-out the early season is past', () => {
	const iceOut = { record: record({ freezeUpOn: FREEZE_UP, iceOutOn: AS_OF }) };
	expect(look(iceOut)).toMatchObject({ phase: 'past', pastBecause: 'iceOut', growth: null });
});

test('without any weather nothing is known', () => {
	expect(look({ ...unfrozen, weather: [] })).toMatchObject({
		phase: 'unknown',
		cooling: null,
		freezing: null
	});
});

test('on a river a test has to show what moving water adds', () => {
	const on = (water: 'lake' | 'river') => look({ lake: { ...LAKE, water } }).growth?.test;
	expect(on('lake')).toMatchObject({ lowest_m: 0.1, asked_m: 0.15 });
	expect(on('river')?.lowest_m).toBeCloseTo(0.115, 9);
	expect(on('river')?.asked_m).toBeCloseTo(0.1725, 9);
});

test('in a warm spell that doubles, loads and the test ask for today’s thickness', () => {
	const warm = past().map((day) =>
		day.on === AS_OF ? { ...day, air_degC: -1, min_degC: -8, max_degC: 5 } : day
	);
	const known = warm.filter(({ on }) => on >= '2026-07-01');
	const growth = look({ weather: [...known, ...ahead(0)] }).growth;
	expect(growth?.loads[0]).toMatchObject({ base_m: 0.15, required_m: 0.3 });
	expect(growth?.test).toMatchObject({ lowest_m: 0.1, asked_m: 0.3 });
});
