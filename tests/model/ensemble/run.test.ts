import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { runEnsemble } from '#lib/model/ensemble/run.ts';
import { usualPrecipitation_kg_m2 } from '#lib/model/snow-prior.ts';
import { runSeason } from '#lib/model/season.ts';
import { total_m } from '#lib/model/column.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { WeatherDay } from '#lib/model/weather.ts';
import {
	band,
	coldWinter,
	dayAt,
	ensembleInput,
	follow,
	FREEZE_UP,
	lastDay,
	mean,
	median,
	quantile
} from '../../support/invented-ensemble.ts';
import { measuredReading } from '../../support/measured-reading.ts';
import { INVENTED_LAKE } from '../../support/seeded-winter.ts';
import { weatherDay } from '../../support/weather-day.ts';

const READ: Reading[] = [
	measuredReading('a', dayAt(20), { total_m: 0.2, snow_m: 0.05 }),
	measuredReading('b', dayAt(40), { clear_m: 0.25, white_m: 0.03 })
];

test('the same seed gives the same answer to the last bit', () => {
	const input = ensembleInput({ readings: READ, members: 100 });
	expect(follow(input)).toEqual(follow(input));
});

test('another seed gives nearly the same quantiles', () => {
	const [one, other] = [7, 8].map((seed) => lastDay(ensembleInput({ seed, readings: READ })));
	for (const share of [0.05, 0.1, 0.5, 0.9, 0.95]) {
		const apart_m = quantile(one?.hole_m ?? [], share) - quantile(other?.hole_m ?? [], share);
		expect(apart_m).not.toBe(0);
		expect(Math.abs(apart_m)).toBeLessThan(0.025);
	}
});

test('half the members give nearly the same quantiles', () => {
	const whole = lastDay(ensembleInput({ members: 800 })).hole_m;
	const half = lastDay(ensembleInput({ members: 400 })).hole_m;
	for (const share of [0.05, 0.1, 0.5, 0.9, 0.95])
		expect(Math.abs(quantile(whole, share) - quantile(half, share))).toBeLessThan(0.02);
});

test('the middle of the members is the single season, within what they differ', () => {
	const weather = coldWinter(60);
	const days = runSeason({ lake: INVENTED_LAKE, freezeUpOn: FREEZE_UP, until: dayAt(60), weather });
	const single_m = days.map(({ column }) => total_m(column));
	const ensemble = follow(ensembleInput({ weather }));
	expect(ensemble.map(({ on }) => on)).toEqual(days.map(({ on }) => on));
	for (const index of [10, 30, 60]) {
		const { site_m } = ensemble[index] ?? { site_m: [] };
		expect(Math.abs(median(site_m) - (single_m[index] ?? NaN))).toBeLessThan(
			0.02 + 0.05 * (single_m[index] ?? NaN)
		);
	}
});

test('a hole has more scatter than the site', () => {
	const { site_m, hole_m } = lastDay(ensembleInput());
	expect(band(hole_m)).toBeGreaterThan(1.1 * band(site_m));
});

test('on the day of a reading both what was said before it and what is said after it are told', () => {
	const days = follow(ensembleInput({ readings: READ }));
	const read = days.filter(({ before_m }) => before_m !== null);
	expect(read.map(({ on }) => on)).toEqual(READ.map(({ on }) => on));
	expect(
		read.map(({ recalibrations }) => recalibrations.map(({ readingId }) => readingId))
	).toEqual([['a'], ['b']]);
	const untold = follow(ensembleInput({ readings: READ.slice(0, 1) }));
	expect(read[1]?.before_m).toEqual(untold[40]?.hole_m);
	for (const { before_m, hole_m } of read) expect(band(hole_m)).toBeLessThan(band(before_m ?? []));
});

test('a reading without a thickness does not pass for one: the next counts as much', () => {
	const thick = measuredReading('thick', dayAt(50), { total_m: 0.5 });
	const snow = measuredReading('snow', dayAt(49), { slush_m: 0 });
	const through = {
		...measuredReading('fell', dayAt(49), { total_m: 0 }),
		kind: 'wentThrough' as const
	};
	const last = (readings: Reading[]) =>
		median(follow(ensembleInput({ readings }))[50]?.site_m ?? []);
	const alone = last([thick]);
	expect(last([through, thick])).toBe(alone);
	expect(Math.abs(last([snow, thick]) - alone)).toBeLessThan(0.01);
	expect(alone).toBeGreaterThan(median(lastDay(ensembleInput()).site_m));
});

test('two readings of a day count as two, without the days before them twice', () => {
	const read = (index: number, id: string) => measuredReading(id, dayAt(index), { total_m: 0.5 });
	const width = (readings: Reading[]) =>
		band(follow(ensembleInput({ readings, members: 1000 }))[50]?.site_m ?? []);
	expect(width([read(50, 'a'), read(50, 'b'), read(50, 'c')])).toBeLessThan(
		0.8 * width([read(50, 'a')])
	);
});

test('a mistyped reading does not wreck the winter', () => {
	const typed = measuredReading('slip', dayAt(50), { total_m: 2 });
	const without = lastDay(ensembleInput({ readings: READ }));
	const days = follow(ensembleInput({ readings: [...READ, typed] }));
	const last = days.at(-1);
	expect(Math.abs(median(last?.hole_m ?? []) - median(without.hole_m))).toBeLessThan(0.02);
	expect(days[50]?.recalibrations[0]?.isAskedAbout).toBe(true);
});

test('"went through" and an "at least" that is met leave the median, thicker ice raises it', () => {
	const at = (change: Partial<Reading>, thickness_m: number) => {
		const said = { ...measuredReading('a', dayAt(50), { total_m: thickness_m }), ...change };
		return median(lastDay(ensembleInput({ readings: [said] })).site_m);
	};
	const without = median(lastDay(ensembleInput()).site_m);
	expect(at({ kind: 'wentThrough' }, 0.02)).toBe(without);
	expect(at({ kind: 'atLeast' }, 0.1)).toBe(without);
	expect(at({ kind: 'atLeast' }, 0.7)).toBeGreaterThan(without + 0.02);
});

/** The invented winter with so much snow reported of each day; `null` is not reported. */
function snowing(each_kg_m2: (day: WeatherDay) => number | null) {
	const weather = coldWinter(60).map((day) => {
		const fall = each_kg_m2(day);
		return { ...day, precipitation_kg_m2: fall, snowfall_kg_m2: fall };
	});
	return lastDay(ensembleInput({ weather, members: 600 }));
}

test('unknown snow widens the band about that of the usual amount', () => {
	const unknown = snowing(() => null);
	const usual = snowing(({ air_degC }) =>
		usualPrecipitation_kg_m2(INVENTED_LAKE.latitude, air_degC ?? 0)
	);
	expect(Math.abs(median(unknown.site_m) - median(usual.site_m))).toBeLessThan(0.03);
	expect(band(unknown.site_m)).toBeGreaterThan(1.1 * band(usual.site_m));
});

test('without a snow record ice is not estimated as if it were bare', () => {
	const unknown = snowing(() => null).hole_m;
	const bare = snowing(() => 0).hole_m;
	expect(median(unknown)).toBeLessThan(median(bare) - 0.03);
	expect(quantile(unknown, 0.1)).toBeLessThan(quantile(bare, 0.1) - 0.05);
});

/** The weather without the days from one to another. */
const gapped = (weather: readonly WeatherDay[], from: number, to: number) =>
	weather.filter(({ on }) => on < dayAt(from) || on >= dayAt(to));

test('a gap in the weather widens the band and never raises the median', () => {
	const weather = coldWinter(60);
	const whole = follow(ensembleInput({ weather, members: 1500 }));
	const broken = follow(ensembleInput({ weather: gapped(weather, 30, 40), members: 1500 }));
	const [before, after] = [broken[30], broken[40]];
	expect(median(after?.site_m ?? [])).toBeLessThan(median(before?.site_m ?? []) + 0.003);
	expect(median(after?.site_m ?? [])).toBeLessThan(median(whole[40]?.site_m ?? []));
	expect(band(after?.site_m ?? [])).toBeGreaterThan(1.2 * band(before?.site_m ?? []));
	expect(band(after?.site_m ?? [])).toBeGreaterThan(1.1 * band(whole[40]?.site_m ?? []));
	expect(median(broken.at(-1)?.site_m ?? [])).toBeLessThan(median(whole.at(-1)?.site_m ?? []));
});

test('a reported day without a temperature is a gap as well', () => {
	const weather = coldWinter(60);
	const untold = weather.map((day, index) =>
		index >= 30 && index < 40 ? { ...day, air_degC: null } : day
	);
	const [without, whole] = [untold, weather].map((days) =>
		lastDay(ensembleInput({ weather: days }))
	);
	expect(median(without?.site_m ?? [])).toBeLessThan(median(whole?.site_m ?? []));
	expect(band(without?.site_m ?? [])).toBeGreaterThan(band(whole?.site_m ?? []));
});

test('a gap before there is any ice makes none', () => {
	const weather = [weatherDay(FREEZE_UP), weatherDay(dayAt(20))];
	for (const { site_m } of follow(ensembleInput({ weather }))) expect(Math.max(...site_m)).toBe(0);
});

test('freeze-up between two days widens the band and lies between those of its ends', () => {
	const run = (from: number, by: number | null) =>
		follow(
			ensembleInput({
				freezeUpOn: dayAt(from),
				freezeUpBy: by === null ? null : dayAt(by),
				until: dayAt(30)
			})
		).at(-1)?.site_m ?? [];
	const [early, late, between] = [run(0, null), run(14, null), run(0, 14)];
	expect(band(between)).toBeGreaterThan(1.15 * band(early));
	expect(band(between)).toBeGreaterThan(1.15 * band(late));
	expect(median(between)).toBeLessThan(median(early));
	expect(median(between)).toBeGreaterThan(median(late));
});

test('freeze-up between two days is drawn evenly over them', () => {
	const frozen: number[] = [];
	const weather = coldWinter(20);
	runEnsemble(ensembleInput({ weather, freezeUpBy: dayAt(9), members: 500 }), ({ members }) => {
		frozen.push(mean(members.clear_m.map((clear_m) => (clear_m > 0 ? 1 : 0))));
	});
	for (let day = 1; day <= 10; day++) expect(frozen[day]).toBeCloseTo(day / 10, 1);
	expect(frozen[10]).toBe(1);
});

test('readings narrow the band by the mean of many winters', () => {
	const widths = [1, 2, 3, 4, 5, 6].map((seed) => {
		const weather = coldWinter(60, seed);
		const input = ensembleInput({ weather, members: 200, seed: 40 + seed });
		const truth = follow(ensembleInput({ weather, members: 8, seed }));
		const readings = [20, 40, 58].map((day) =>
			measuredReading(`r${day}`, dayAt(day), { total_m: truth[day]?.hole_m[seed] ?? 0 })
		);
		return {
			prior: band(lastDay(input).hole_m),
			read: band(lastDay({ ...input, readings }).hole_m)
		};
	});
	const prior = mean(widths.map((each) => each.prior));
	expect(mean(widths.map((each) => each.read))).toBeLessThan(0.85 * prior);
});

test('a site held open has no ice and begins anew', () => {
	const days = follow(
		ensembleInput({ events: [{ kind: 'reopened', on: dayAt(20), refrozeOn: dayAt(25) }] })
	);
	const thickest = (index: number) => Math.max(...(days[index]?.site_m ?? []));
	expect(median(days[19]?.site_m ?? [])).toBeGreaterThan(0.1);
	expect(thickest(22)).toBe(0);
	expect(thickest(25)).toBe(0);
	expect(median(days[35]?.site_m ?? [])).toBeGreaterThan(0.05);
	expect(median(days[35]?.site_m ?? [])).toBeLessThan(
		median(follow(ensembleInput())[35]?.site_m ?? [])
	);
});

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const maybe = (value: fc.Arbitrary<number>) => fc.option(value, { nil: null, freq: 4 });

const anyWeather = fc
	.array(
		fc.option(
			fc.record({
				air_degC: maybe(real(-45, 25)),
				precipitation_kg_m2: maybe(real(0, 60)),
				snowfall_kg_m2: maybe(real(0, 40)),
				landSnow_m: maybe(real(0, 3))
			}),
			{ nil: null, freq: 4 }
		),
		{ minLength: 2, maxLength: 60 }
	)
	.map((days) => days.flatMap((known, i) => (known ? [weatherDay(dayAt(i), known)] : [])));

const anyHole = fc.record({
	total_m: maybe(real(0, 3)),
	clear_m: maybe(real(0, 2)),
	white_m: maybe(real(0, 2)),
	snow_m: maybe(real(0, 2)),
	slush_m: maybe(real(0, 1)),
	freeboard_m: maybe(real(-0.5, 0.5))
});

const anyReading = fc.record({
	id: fc.constant('any'),
	on: fc.integer({ min: 0, max: 60 }).map((day) => addDays(FREEZE_UP, day)),
	place: fc.constant(null),
	kind: fc.constantFrom('measured' as const, 'atLeast' as const, 'wentThrough' as const),
	holes: fc.array(anyHole, { maxLength: 3 }),
	core: fc.constant(null),
	by: fc.constant(null),
	secondHand: fc.boolean(),
	remark: fc.constant(null)
});

test('whatever the weather and the readings, everything told is a number that can be', () => {
	fc.assert(
		fc.property(anyWeather, fc.array(anyReading, { maxLength: 4 }), (weather, readings) => {
			runEnsemble(ensembleInput({ weather, readings, members: 20 }), ({ holes, members }) => {
				for (const values of [...Object.values(holes), ...Object.values(members)]) {
					if (typeof values === 'number') continue;
					for (const value of values as Float64Array)
						if (!(value >= 0 && value < 1e9)) throw new Error(`${value} is told`);
				}
			});
		}),
		{ numRuns: 100, seed: 61 }
	);
});
