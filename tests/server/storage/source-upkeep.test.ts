import { sql } from 'kysely';
import { expect, test } from 'vitest';
import {
	addLogEntry,
	KEPT_ENTRIES,
	listLogEntries
} from '../../../src/lib/server/storage/fetch-log.ts';
import { pruneIssues, storeIssue } from '../../../src/lib/server/storage/forecasts.ts';
import { refetchable } from '../../../src/lib/server/storage/refetchable.ts';
import { readSourceHours, storeHours } from '../../../src/lib/server/storage/source-weather.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { hoursFrom, useSource } from '../../support/invented-source.ts';

/** A lake that uses one source, of use number 1. */
async function lakeWithSource() {
	const ctx = await freshContext('2027-01-20T12:00:00Z');
	const { id } = await inventedLake(ctx);
	await useSource(ctx, id);
	return { ctx, db: ctx.db, id };
}

test('the log keeps the newest hundred of each lake and source', async () => {
	const { ctx, db, id } = await lakeWithSource();
	const other = (await inventedLake(ctx, { name: 'Other' })).id;
	const entry = (lake_id: string, stored: number) => ({
		source_id: 'invented-weather',
		lake_id,
		at: '2027-01-20T12:00:00.000Z',
		part: 'history' as const,
		outcome: 'ok' as const,
		stored,
		calls: 1,
		bytes: 1,
		duration_ms: 1,
		faults: '[]'
	});
	await addLogEntry(db, entry(other, 7));
	for (let index = 0; index < KEPT_ENTRIES + 20; index++) await addLogEntry(db, entry(id, index));
	const kept = await listLogEntries(db, { lakeId: id, limit: 1000 });
	expect(kept.map(({ stored }) => stored)).toEqual(
		Array.from({ length: KEPT_ENTRIES }, (_, index) => KEPT_ENTRIES + 19 - index)
	);
	expect(await listLogEntries(db, { lakeId: other, limit: 1000 })).toHaveLength(1);
});

test('of old forecasts the last of each day is kept, of the last fortnight all', async () => {
	const { db } = await lakeWithSource();
	const now = new Date('2027-01-20T12:00:00Z');
	const at = (days: number, hour: number) =>
		new Date(Date.UTC(2027, 0, 20 - days, hour, 0, 0)).toISOString();
	const times = [
		at(0, 6),
		at(0, 11),
		at(3, 0),
		at(3, 6),
		at(20, 0),
		at(20, 6),
		at(20, 18),
		at(1200, 6)
	];
	for (const time of times) {
		const issue = {
			lakeSourceId: 1,
			issuedAt: new Date(time),
			correction_K: 0,
			place_m: null,
			days: []
		};
		await db.transaction().execute((tx) => storeIssue(tx, issue));
	}
	await pruneIssues(db, 1, now);
	const { rows } = await sql<{ issued_at: string }>`
		SELECT issued_at FROM forecast_issue ORDER BY issued_at DESC`.execute(db);
	expect(rows.map(({ issued_at }) => issued_at)).toEqual([
		at(0, 11),
		at(0, 6),
		at(3, 6),
		at(3, 0),
		at(20, 18)
	]);
});

test('an hour that comes again replaces what it tells, and erases nothing that was not asked for', async () => {
	const { db } = await lakeWithSource();
	const first = hoursFrom('2027-01-20T00:00:00Z', [-3, -4], { precipitation_kg_m2: 1 });
	const second = hoursFrom('2027-01-20T01:00:00Z', [-9, null], { wind_m_s: 2 });
	await storeHours(db, 'source_hour', 1, first);
	await storeHours(db, 'source_hour', 1, second, ['wind_m_s']);
	const at_s = Date.UTC(2027, 0, 20) / 1000;
	const hours = (await readSourceHours(db, 'source_hour', [1], at_s, at_s + 86_400)).get(1);
	expect(hours).toMatchObject([
		{ air_degC: -3, precipitation_kg_m2: 1, wind_m_s: null },
		{ air_degC: -9, precipitation_kg_m2: 1, wind_m_s: 2 },
		{ air_degC: null, precipitation_kg_m2: null, wind_m_s: 2 }
	]);
});

test.each([
	['air hotter than any', { air_degC: 66 }],
	['rain that nobody has seen', { precipitation_kg_m2: 501 }],
	['a negative snow depth', { landSnow_m: -0.1 }]
])('the database itself refuses %s', async (_, wrong) => {
	const { db } = await lakeWithSource();
	const hours = hoursFrom('2027-01-20T00:00:00Z', [-3], wrong).map((hour) => ({
		...hour,
		...wrong
	}));
	await expect(storeHours(db, 'source_hour', 1, hours)).rejects.toThrow('CHECK constraint failed');
});

test('only what can be fetched again is written without waiting for the disk', async () => {
	const { db } = await lakeWithSource();
	const synchronous = async (on: typeof db) =>
		(await sql<{ synchronous: number }>`PRAGMA synchronous`.execute(on)).rows[0]?.synchronous;
	expect(await synchronous(db)).toBe(2);
	expect(await refetchable(db, synchronous)).toBe(1);
	await expect(
		refetchable(db, async () => {
			throw new Error('broken off');
		})
	).rejects.toThrow('broken off');
	expect(await synchronous(db)).toBe(2);
});
