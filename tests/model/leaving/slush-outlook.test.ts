import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { floodAhead } from '#lib/model/flood-ahead.ts';
import { slushOutlook } from '#lib/model/leaving/slush-outlook.ts';
import { parametersFor } from '#lib/model/parameters.ts';
import { LAKE } from '../../support/invented-winter.ts';

const ON = '2027-02-10';
const P = parametersFor(LAKE);
const SNOW = { snow_m: 0.1, snowDensity_kg_m3: 250 };
const daysOf = (depths: readonly [p50: number, p90: number][]) =>
	depths.map(([p50, p90], index) => ({
		on: addDays(ON, index),
		source: 'forecast' as const,
		snow_m: every(0.1),
		total_m: every(0.4),
		slush_m: { p05: 0, p10: 0, p50, p90, p95: p90 }
	}));
const every = (value: number) => ({ p05: value, p10: value, p50: value, p90: value, p95: value });
const look = (depths: readonly [number, number][]) =>
	slushOutlook(daysOf(depths), ON, SNOW, 0.04, P);

test('it is frozen when half, and when nine in ten of the spots have none', () => {
	const slush = look([
		[0.05, 0.1],
		[0.01, 0.06],
		[0, 0.03],
		[0, 0]
	]);
	expect(slush).toMatchObject({
		p50_m: 0.05,
		p90_m: 0.1,
		floodsWith_m: 0.04,
		frozenBy: '2027-02-12',
		surelyFrozenBy: '2027-02-13'
	});
	expect(slush?.needs_degCd).toBeGreaterThan(10);
});

test('slush that does not freeze in the days told has no day', () => {
	expect(
		look([
			[0.05, 0.1],
			[0.05, 0.1]
		])
	).toMatchObject({ frozenBy: null, surelyFrozenBy: null });
});

test('without slush nothing has to freeze, and a few wet spots are gone by at nine in ten', () => {
	expect(look([[0, 0]])).toMatchObject({ needs_degCd: null, frozenBy: null });
	expect(
		look([
			[0, 0.05],
			[0, 0]
		])
	).toMatchObject({ frozenBy: ON, surelyFrozenBy: '2027-02-11' });
});

test('a day that is not estimated has no answer', () => {
	expect(slushOutlook([], ON, SNOW, null, P)).toBeNull();
});

test('snow on it makes it take much more frost', () => {
	const bare = slushOutlook(daysOf([[0.1, 0.2]]), ON, { ...SNOW, snow_m: 0 }, 0, P);
	expect(look([[0.1, 0.2]])?.needs_degCd).toBeGreaterThan(4 * (bare?.needs_degCd ?? 0));
});

test('it has the flood that messages tell of, by the same rule', () => {
	const days = daysOf([
		[0, 0],
		[0, 0.01],
		[0.02, 0.04]
	]);
	const told = floodAhead({ days, asOf: ON }, 0.04, ON);
	expect(told?.from).toBe('2027-02-12');
	expect(slushOutlook(days, ON, SNOW, 0.04, P)?.floodFrom).toBe(told?.from);
	expect(look([[0.02, 0.04]])?.floodFrom).toBeNull();
});
