import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CERTAIN, doubtOf, layersOf } from '#lib/model/doubt.ts';
import { lowerBound_m } from '#lib/model/lower-bound.ts';
import { AT_FREEZE_UP, type SinceAnchor } from '#lib/model/since-anchor.ts';
import type { SeasonDay } from '#lib/model/season.ts';
import { column, seasonDay } from '../support/invented-winter.ts';

const clear = (clear_m: number) => column({ clear_m });
const read: SinceAnchor = { ...AT_FREEZE_UP, anchored_m: 0.3, read_d: 0, layersRead: true };

function total(day: Partial<SeasonDay>, since: SinceAnchor = AT_FREEZE_UP) {
	return doubtOf(seasonDay(day), since, CERTAIN).total;
}

test('in growth without a reading the site is off by 20 %, 2.5 cm at least', () => {
	expect(total({ column: clear(0.3) }).site_m).toBeCloseTo(0.06, 9);
	expect(total({ column: clear(0.05) }).site_m).toBeCloseTo(0.025, 9);
});

test('spots scatter by 20 % and the tape by 1 cm', () => {
	expect(total({ column: clear(0.3) }).spot_m).toBeCloseTo(Math.hypot(0.06, 0.01), 9);
});

test('in decay 30 % of what has melted comes on top', () => {
	const { site_m } = total({ column: clear(0.2), meltSincePeak_m: 0.3 });
	expect(site_m).toBeCloseTo(Math.hypot(0.1, 0.09), 9);
});

test('within ten days of a reading the site is off by 8 %, 2 cm at least', () => {
	expect(total({ column: clear(0.3) }, { ...read, read_d: 10 }).site_m).toBeCloseTo(0.024, 9);
	expect(total({ column: clear(0.1) }, { ...read, read_d: 10 }).site_m).toBeCloseTo(0.02, 9);
});

test('after that the doubt goes back as newer ice grows, or as the reading ages', () => {
	const fresh = total({ column: clear(0.3) }, { ...read, read_d: 11 }).site_m;
	const grown = total({ column: clear(0.3) }, { ...read, read_d: 11, grown_m: 0.15 }).site_m;
	const doubled = total({ column: clear(0.3) }, { ...read, read_d: 11, grown_m: 0.3 }).site_m;
	const old = total({ column: clear(0.3) }, { ...read, read_d: 60 }).site_m;
	expect(fresh).toBeLessThan(grown);
	expect(grown).toBeLessThan(doubled);
	expect(doubled).toBeCloseTo(0.06, 9);
	expect(old).toBeCloseTo(0.06, 9);
});

test('days without a temperature, unknown snow and an uncertain freeze-up each widen it', () => {
	const since = { ...AT_FREEZE_UP, grown_m: 0.3 };
	const usual = total({}, since).site_m;
	expect(total({}, { ...since, gaps_m: 0.03 }).site_m).toBeGreaterThan(usual);
	expect(total({ snowKnown: false }, since).site_m).toBeGreaterThan(usual);
	const spread = { ...CERTAIN, total: 0.03 };
	expect(doubtOf(seasonDay(), since, spread).total.site_m).toBeGreaterThan(usual);
});

test('how much is white stays in doubt where a hole told only the total', () => {
	const day = seasonDay({ column: column({ clear_m: 0.2, white_m: 0.1 }) });
	const layers = doubtOf(day, read, CERTAIN);
	const total = doubtOf(day, { ...read, layersRead: false }, CERTAIN);
	expect(total.white.site_m).toBeGreaterThan(layers.white.site_m);
	expect(total.effective.site_m).toBeGreaterThan(layers.effective.site_m);
	expect(total.total.site_m).toBe(layers.total.site_m);
});

const depth = fc.double({ min: 0, max: 1.2, noNaN: true });
const part = fc.double({ min: 0, max: 0.5, noNaN: true });
const anySince = fc.record({
	anchored_m: fc.option(part),
	read_d: fc.option(fc.nat(100)),
	layersRead: fc.boolean(),
	grown_m: part,
	melted_m: part,
	gapDays: fc.nat(10),
	gaps_m: part
});
const anyDay = fc
	.record({
		clear_m: depth,
		white_m: depth,
		snow_m: depth,
		slush_m: part,
		melt_m: part,
		snowKnown: fc.boolean()
	})
	.map(({ melt_m, snowKnown, ...layers }) =>
		seasonDay({
			column: column({ ...layers, snowDensity_kg_m3: 250 }),
			meltSincePeak_m: melt_m,
			snowKnown
		})
	);

test('the effective bound is never above the bound of the whole thickness', () => {
	fc.assert(
		fc.property(anyDay, anySince, (day, since) => {
			const doubt = doubtOf(day, since, CERTAIN);
			const height = layersOf(day.column);
			expect(lowerBound_m(height.effective, doubt.effective)).toBeLessThanOrEqual(
				lowerBound_m(height.total, doubt.total) + 1e-12
			);
		})
	);
});

test('thicker ice never has a lower bound than thinner ice in the same circumstances', () => {
	fc.assert(
		fc.property(depth, depth, part, (a, b, melt_m) => {
			const bound = (clear_m: number) =>
				lowerBound_m(clear_m, total({ column: clear(clear_m), meltSincePeak_m: melt_m }));
			expect(bound(Math.max(a, b))).toBeGreaterThanOrEqual(bound(Math.min(a, b)) - 1e-12);
		})
	);
});

test('more days without a temperature never raise a bound', () => {
	fc.assert(
		fc.property(anyDay, anySince, part, (day, since, more_m) => {
			const bound = (gaps_m: number) =>
				lowerBound_m(layersOf(day.column).total, doubtOf(day, { ...since, gaps_m }, CERTAIN).total);
			expect(bound(since.gaps_m + more_m)).toBeLessThanOrEqual(bound(since.gaps_m));
		})
	);
});

test('no layer has a doubt that is not a number', () => {
	fc.assert(
		fc.property(anyDay, anySince, (day, since) => {
			for (const { site_m, spot_m } of Object.values(doubtOf(day, since, CERTAIN)))
				expect(Number.isFinite(site_m) && site_m >= 0 && spot_m >= 0.01).toBe(true);
		})
	);
});
