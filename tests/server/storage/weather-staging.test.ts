import { expect, test } from 'vitest';
import type { Kysely } from 'kysely';
import type { DayValues, WeatherHour } from '../../../src/lib/model/hours-to-days.ts';
import {
	clearRejoin,
	markForJoining,
	readRejoin,
	writeJoinedDays
} from '../../../src/lib/server/storage/joined-days.ts';
import type { Database } from '../../../src/lib/server/storage/schema.ts';
import { commitStaged, readRevision } from '../../../src/lib/server/storage/weather-commit.ts';
import {
	readImportedDays,
	readLastObservedDay,
	readWeatherHours
} from '../../../src/lib/server/storage/weather-days.ts';
import {
	countReplaced,
	countStaged,
	dropStaged,
	stageDays,
	stageHours,
	summarizeStagedDays
} from '../../../src/lib/server/storage/weather-staging.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

async function emptyLake(): Promise<{ db: Kysely<Database>; lakeId: string }> {
	const ctx = await freshContext();
	return { db: ctx.db, lakeId: (await inventedLake(ctx)).id };
}

function day(on: string, values: Partial<DayValues> = {}): DayValues {
	return {
		on,
		air_degC: null,
		min_degC: null,
		max_degC: null,
		freezing_degCd: null,
		thawing_degCd: null,
		aboveFreezing_h: null,
		precipitation_kg_m2: null,
		snowfall_kg_m2: null,
		landSnow_m: null,
		wind_m_s: null,
		...values
	};
}

function hour(at_s: number, values: Partial<WeatherHour> = {}): WeatherHour {
	const unknown = { precipitation_kg_m2: null, snowfall_kg_m2: null, landSnow_m: null };
	return { at_s, air_degC: null, wind_m_s: null, ...unknown, ...values };
}

async function store(
	db: Kysely<Database>,
	lakeId: string,
	days: DayValues[],
	importId = 'import'
): Promise<void> {
	await stageDays(db, importId, 'daily', days);
	await commitStaged(db, { lakeId, importId, revision: await readRevision(db, lakeId) });
	await dropStaged(db, importId);
}

test('nothing staged is seen until it is committed', async () => {
	const { db, lakeId } = await emptyLake();
	await stageDays(db, 'a', 'daily', [day('2027-01-01', { air_degC: -3 })]);
	expect(await readImportedDays(db, lakeId, '2027-01-01', '2027-01-31')).toEqual([]);
	expect(await commitStaged(db, { lakeId, importId: 'a', revision: 0 })).toBe(true);
	expect(await readImportedDays(db, lakeId, '2027-01-01', '2027-01-31')).toMatchObject([
		{ on: '2027-01-01', air_degC: -3 }
	]);
});

test('a later value replaces an earlier one, an empty cell erases none', async () => {
	const { db, lakeId } = await emptyLake();
	await store(db, lakeId, [day('2027-01-01', { air_degC: -3, precipitation_kg_m2: 4 })]);
	await store(db, lakeId, [day('2027-01-01', { air_degC: -5, wind_m_s: 2 })]);
	expect(await readImportedDays(db, lakeId, '2027-01-01', '2027-01-01')).toMatchObject([
		{ air_degC: -5, precipitation_kg_m2: 4, wind_m_s: 2 }
	]);
});

test('the same rule holds between rows of one file, hours included', async () => {
	const { db, lakeId } = await emptyLake();
	await stageHours(db, 'a', [hour(3600, { air_degC: -3, wind_m_s: 1 })]);
	await stageHours(db, 'a', [hour(3600, { air_degC: -4 }), hour(7200, { air_degC: -6 })]);
	expect(await countStaged(db, 'a')).toBe(2);
	await commitStaged(db, { lakeId, importId: 'a', revision: 0 });
	expect(await readWeatherHours(db, lakeId, 0, 10_000)).toMatchObject([
		{ at_s: 3600, air_degC: -4, wind_m_s: 1 },
		{ at_s: 7200, air_degC: -6 }
	]);
});

test('an import that was prepared on older weather is not written', async () => {
	const { db, lakeId } = await emptyLake();
	await stageDays(db, 'slow', 'daily', [day('2027-01-01', { air_degC: 9 })]);
	await store(db, lakeId, [day('2027-01-01', { air_degC: -3 })], 'quick');
	expect(await commitStaged(db, { lakeId, importId: 'slow', revision: 0 })).toBe(false);
	expect(await readImportedDays(db, lakeId, '2027-01-01', '2027-01-01')).toMatchObject([
		{ air_degC: -3 }
	]);
});

test('an import with a value that cannot be is refused whole', async () => {
	const { db, lakeId } = await emptyLake();
	await stageDays(db, 'a', 'daily', [day('2027-01-01', { air_degC: -3 })]);
	await stageDays(db, 'a', 'daily', [day('2027-01-02', { air_degC: 400 })]);
	await expect(commitStaged(db, { lakeId, importId: 'a', revision: 0 })).rejects.toThrow('CHECK');
	expect(await readImportedDays(db, lakeId, '2027-01-01', '2027-01-31')).toEqual([]);
	expect(await readRevision(db, lakeId)).toBe(0);
});

test('what is staged can be summed up, compared and dropped', async () => {
	const { db, lakeId } = await emptyLake();
	await store(db, lakeId, [day('2027-01-02', { air_degC: -3 })]);
	await stageDays(db, 'a', 'daily', [
		day('2027-01-01', { min_degC: -9, max_degC: -1 }),
		day('2027-01-02', { wind_m_s: 3 }),
		day('2027-01-05', { air_degC: -3 })
	]);
	expect(await summarizeStagedDays(db, 'a')).toEqual({
		from: '2027-01-01',
		to: '2027-01-05',
		knownDays: 2
	});
	expect(await countReplaced(db, lakeId, 'a')).toBe(1);
	await dropStaged(db, 'a');
	expect(await countStaged(db, 'a')).toBe(0);
});

test('the last observation is the last day with a temperature', async () => {
	const { db, lakeId } = await emptyLake();
	expect(await readLastObservedDay(db, lakeId)).toBeNull();
	const note = await noted(db, lakeId);
	const days = [
		day('2027-01-01', { air_degC: -3 }),
		day('2027-01-02', { min_degC: -9, max_degC: -1 }),
		day('2027-01-03', { precipitation_kg_m2: 2, min_degC: -4 })
	];
	expect(await writeJoinedDays(db, note, '2027-01-01', '2027-01-03', days)).toBe(true);
	expect(await readLastObservedDay(db, lakeId)).toBe('2027-01-02');
});

test('days that were joined of what was there before a change are not written', async () => {
	const { db, lakeId } = await emptyLake();
	const before = await noted(db, lakeId);
	// Another process takes in a change, joins it and clears its note.
	const change = await noted(db, lakeId);
	const write = (note: typeof before, air_degC: number) =>
		writeJoinedDays(db, note, '2027-01-01', '2027-01-03', [day('2027-01-01', { air_degC })]);
	expect(await write(change, -3)).toBe(true);
	await clearRejoin(db, change);
	expect(await write(before, -20)).toBe(false);
	// Nor where the note was made anew since.
	await noted(db, lakeId);
	expect(await write(before, -20)).toBe(false);
	const joined = await db.selectFrom('joined_day').select('air_degC').execute();
	expect(joined).toEqual([{ air_degC: -3 }]);
});

async function noted(db: Kysely<Database>, lakeId: string) {
	await markForJoining(db, lakeId, '2027-01-01', '2027-01-03');
	const note = await readRejoin(db, lakeId);
	if (!note) throw new Error('nothing is noted');
	return note;
}
