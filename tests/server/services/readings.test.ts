import { expect, test } from 'vitest';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import {
	addReadings,
	deleteReading,
	getReading,
	listReadings,
	ReadingNotFound,
	restoreReading
} from '../../../src/lib/server/services/readings.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { updateReading } from '../../support/update-reading.ts';

const MEASURED = {
	on: '2027-01-10',
	place: 'off the point',
	kind: 'measured',
	holes: [
		{ total_m: 0.31, clear_m: 0.25, white_m: 0.06, snow_m: 0.1, slush_m: 0, freeboard_m: -0.01 },
		{ total_m: 0.29 }
	],
	core: 'sound',
	by: 'J.',
	secondHand: true,
	remark: 'five steps apart'
};

async function lakeWith(...readings: object[]) {
	const ctx = await freshContext();
	const { id: lake } = await inventedLake(ctx);
	const parsed = readings.map((reading) => readingInput.parse(reading));
	return { ctx, lake, ids: await addReadings(ctx, lake, 'main', parsed) };
}

test('a reading is kept with all its holes', async () => {
	const { ctx, lake, ids } = await lakeWith(MEASURED);
	const unknown = { clear_m: null, white_m: null, snow_m: null, slush_m: null, freeboard_m: null };
	expect(await getReading(ctx, lake, ids[0] ?? '')).toEqual({
		id: ids[0],
		...MEASURED,
		holes: [MEASURED.holes[0], { total_m: 0.29, ...unknown }]
	});
});

test('readings come by day, and of one winter when asked', async () => {
	const { ctx, lake, ids } = await lakeWith(
		MEASURED,
		{ ...MEASURED, on: '2026-12-20' },
		{ ...MEASURED, on: '2026-02-01' }
	);
	const all = await listReadings(ctx, lake, 'main');
	expect(all.map(({ id }) => id)).toEqual([ids[2], ids[1], ids[0]]);
	expect(await listReadings(ctx, lake, 'main', '2026-27')).toHaveLength(2);
});

test('six hundred readings are stored and read in one go', async () => {
	const { ctx, lake } = await lakeWith(...Array.from({ length: 600 }, () => MEASURED));
	const all = await listReadings(ctx, lake, 'main');
	expect(all).toHaveLength(600);
	expect(all.every(({ holes }) => holes.length === 2)).toBe(true);
});

test('a change keeps what it does not name and replaces the holes that it brings', async () => {
	const { ctx, lake, ids } = await lakeWith(MEASURED);
	const [id = ''] = ids;
	const hole = { ...MEASURED.holes[0], total_m: 0.33, clear_m: 0.27, white_m: 0.06 };
	await updateReading(ctx, lake, id, { holes: [readingInput.shape.holes.element.parse(hole)] });
	const changed = await getReading(ctx, lake, id);
	expect(changed).toMatchObject({ on: '2027-01-10', by: 'J.', holes: [{ total_m: 0.33 }] });
	expect(changed.holes).toHaveLength(1);
});

test('a change that contradicts the rest is refused and changes nothing', async () => {
	const { ctx, lake, ids } = await lakeWith(MEASURED);
	const [id = ''] = ids;
	await expect(updateReading(ctx, lake, id, { holes: [] })).rejects.toThrow('at least one hole');
	expect((await getReading(ctx, lake, id)).holes).toHaveLength(2);
});

test('a deleted reading is gone until it is restored', async () => {
	const { ctx, lake, ids } = await lakeWith(MEASURED);
	const [id = ''] = ids;
	await deleteReading(ctx, lake, id);
	expect(await listReadings(ctx, lake, 'main')).toEqual([]);
	await expect(deleteReading(ctx, lake, id)).rejects.toThrow(ReadingNotFound);
	expect(await restoreReading(ctx, lake, id)).toMatchObject({ id, holes: [{}, {}] });
	expect(await listReadings(ctx, lake, 'main')).toHaveLength(1);
});

test('a reading of another lake is not found', async () => {
	const { ctx, ids } = await lakeWith(MEASURED);
	const other = await inventedLake(ctx, { name: 'Other' });
	await expect(getReading(ctx, other.id, ids[0] ?? '')).rejects.toThrow(ReadingNotFound);
});

test('somebody who went through need not have measured', () => {
	const fell = readingInput.parse({ on: '2027-01-10', kind: 'wentThrough', holes: [] });
	expect(fell).toMatchObject({ kind: 'wentThrough', holes: [], place: null });
});

test.each([
	['a measured reading without a hole', { holes: [] }, 'holes'],
	['a hole without a value', { holes: [{}] }, 'holes.0'],
	['"at least" without a thickness', { kind: 'atLeast', holes: [{ snow_m: 0.1 }] }, 'holes'],
	['metres that were centimetres', { holes: [{ total_m: 31 }] }, 'holes.0.total_m'],
	['a negative thickness', { holes: [{ total_m: -0.1 }] }, 'holes.0.total_m'],
	['a day that is none', { on: '2027-13-01' }, 'on']
])('%s is refused and named', (_, wrong, field) => {
	const { error } = readingInput.safeParse({ ...MEASURED, ...wrong });
	expect(error?.issues.map(({ path }) => path.join('.'))).toEqual([field]);
});
