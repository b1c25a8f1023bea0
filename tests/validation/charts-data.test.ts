import { expect, test } from 'vitest';
import { z } from 'zod';
import { goldThickness_m } from '#lib/model/bearing.ts';
import { chartMinimum, type ChartSet, type ChartUse } from '#lib/model/load-case.ts';
import charts from '../../data/charts/minimums.json' with { type: 'json' };

const USES = [
	'onFoot',
	'group',
	'snowmobile',
	'atv',
	'car',
	'lightTruck',
	'heavyTruck',
	'truckWithShelter'
] as const satisfies readonly ChartUse[];
const words = z.string().min(1);
const figure = words.nullable();

const schema = z.strictObject({
	minimums: z.array(
		z.strictObject({
			use: z.enum(USES),
			set: z.enum(['strict', 'common']),
			thickness_m: z.number().min(0.05).max(1).nullable(),
			body: words,
			year: words,
			governedBy: words,
			confidence: words,
			note: z.string()
		})
	),
	published: z.array(
		z.strictObject({
			body: words,
			date: words,
			unit: z.enum(['in', 'cm']),
			onFoot: figure,
			group: figure,
			snowmobile: figure,
			car: figure,
			truck: figure,
			heavier: figure,
			whiteIce: figure,
			confidence: words,
			note: z.string()
		})
	),
	standardLoads: z.array(
		z.strictObject({
			id: z.string().regex(/^[a-z-]+$/),
			name: words,
			mass_kg: z.number().positive(),
			use: z.enum(USES),
			parked_h: z.number().min(0),
			wetCracks: z.union([z.literal(0), z.literal(1), z.literal(2)]),
			current: z.boolean(),
			group: z.boolean(),
			trailer: z.null(),
			count: z.literal(1),
			spacing_m: z.null()
		})
	)
});

const data = schema.parse(charts);

function asked_m(set: ChartSet, use: ChartUse): number | null {
	return chartMinimum(data.minimums, set, use).thickness_m;
}

test('each set has one row for each use', () => {
	const keys = data.minimums.map((row) => `${row.set} ${row.use}`);
	expect(new Set(keys).size).toBe(keys.length);
	expect(keys).toHaveLength(2 * USES.length);
});

test('the strict set never asks less than the common one', () => {
	for (const use of USES) {
		expect(asked_m('strict', use) ?? Infinity).toBeGreaterThanOrEqual(asked_m('common', use) ?? 0);
	}
});

test.each(['strict', 'common'] as const)('the %s set never asks less for more load', (set) => {
	const minima = USES.map((use) => asked_m(set, use) ?? Infinity);
	expect(minima).toEqual(minima.toSorted((a, b) => a - b));
});

test('no row asks less than the formula at A = 3.5 for the loads held against it', () => {
	for (const load of data.standardLoads) {
		for (const set of ['strict', 'common'] as const) {
			expect(asked_m(set, load.use) ?? Infinity).toBeGreaterThanOrEqual(
				goldThickness_m(load.mass_kg)
			);
		}
	}
});

/** The largest number of a published figure, in metres. */
function largest_m(figures: (string | null)[], unit: 'in' | 'cm'): number {
	const text = figures
		.filter((each) => each !== null)
		.join(' ')
		.replace(/\(?\b(19|20)\d\d\b:?\)?/g, '');
	const numbers = [...text.matchAll(/\d+/g)].map((hit) => Number(hit[0]));
	return Math.max(0, ...numbers) * (unit === 'in' ? 0.0254 : 0.01);
}

test.each([
	['onFoot', 'onFoot'],
	['group', 'group'],
	['car', 'car'],
	['truck', 'lightTruck']
] as const)('no published chart asks more for %s than the strict set', (row, use) => {
	for (const chart of data.published) {
		const strict_m = asked_m('strict', use) ?? Infinity;
		// A rounded 6 in or 16 in is 15 or 40 cm in the agencies' own metric charts.
		expect(largest_m([chart[row]], chart.unit)).toBeLessThanOrEqual(strict_m + 0.0065);
	}
});

test('no published chart asks more for a snowmobile than the strict set, to half a centimetre', () => {
	for (const chart of data.published) {
		expect(largest_m([chart.snowmobile], chart.unit)).toBeLessThanOrEqual(
			(asked_m('strict', 'snowmobile') ?? 0) + 0.0051
		);
	}
});

test('every standard load has an id of its own', () => {
	const ids = data.standardLoads.map((load) => load.id);
	expect(new Set(ids).size).toBe(ids.length);
});
