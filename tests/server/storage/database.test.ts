import SqliteFile from 'libsql';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { expect, onTestFinished, test } from 'vitest';
import { openDatabase } from '../../../src/lib/server/storage/database.ts';
import { insertLake, findLakeRow, type LakeRow } from '../../../src/lib/server/storage/lakes.ts';
import { listReadingRows } from '../../../src/lib/server/storage/readings.ts';

const LAKE: LakeRow = {
	id: 'pond',
	name: 'Pond',
	latitude: 50,
	longitude: -40,
	elevation_m: null,
	area_km2: null,
	mean_depth_m: null,
	water: 'lake',
	time_zone: 'Etc/GMT+3',
	chart_set: 'strict',
	is_invented: 1,
	today: null,
	weather_revision: 0,
	created_at: '2027-01-01T00:00:00.000Z',
	deleted_at: null
};

function folder(): string {
	const path = mkdtempSync(join(tmpdir(), 'frostledger-storage-'));
	onTestFinished(() => rmSync(path, { recursive: true, force: true }));
	return path;
}

async function open(path: string) {
	const db = await openDatabase(path);
	onTestFinished(() => db.destroy());
	return db;
}

test('a new folder gets a database, and what is stored is there when it is opened again', async () => {
	const path = join(folder(), 'deeper', 'frostledger.db');
	const first = await openDatabase(path);
	await insertLake(first, LAKE);
	await first.destroy();
	const second = await open(path);
	expect(await findLakeRow(second, 'pond')).toEqual(LAKE);
});

test('the file is written ahead, synced in full, and keeps its references', async () => {
	const db = await open(join(folder(), 'frostledger.db'));
	const setting = async (name: string) =>
		Object.values((await sql<object>`${sql.raw(`PRAGMA ${name}`)}`.execute(db)).rows[0] ?? {})[0];
	expect(await setting('journal_mode')).toBe('wal');
	expect(await setting('synchronous')).toBe(2);
	expect(await setting('foreign_keys')).toBe(1);
	expect(await setting('busy_timeout')).toBe(5000);
});

test('every table is strict', async () => {
	const db = await open(':memory:');
	const { rows } = await sql<{ name: string; strict: number }>`
		SELECT name, strict FROM pragma_table_list
		WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite%' AND name NOT LIKE 'kysely%'
	`.execute(db);
	expect(rows.map(({ name }) => name).toSorted()).toEqual([
		'api_token',
		'csv_trust',
		'fetch_log',
		'fetch_state',
		'forecast_day',
		'forecast_hour',
		'forecast_issue',
		'guest_link',
		'hidden_load',
		'history',
		'hole',
		'joined_day',
		'known_device',
		'lake',
		'lake_change',
		'lake_source',
		'lease',
		'load_lead',
		'own_load',
		'passphrase',
		'person',
		'reading',
		'reading_version',
		'refresh_wish',
		'rejoin',
		'removal',
		'route',
		'route_point',
		'sent_reading',
		'session',
		'site',
		'site_event',
		'source',
		'source_day',
		'source_hour',
		'source_key',
		'source_state',
		'telling',
		'telling_date',
		'telling_feed',
		'telling_message',
		'trip_note',
		'weak_spot',
		'weather_day',
		'weather_hour',
		'webhook',
		'webhook_outbox',
		'winter',
		'writer'
	]);
	expect(rows.filter(({ strict }) => strict !== 1)).toEqual([]);
});

test.each([
	['a latitude past the pole', { latitude: 90.1 }],
	['an endless longitude', { longitude: Infinity }],
	['a negative area', { area_km2: -1 }],
	['another water', { water: 'sea' as 'lake' }],
	['a day that sorts wrongly', { today: '2027-1-1' }]
])('the database itself refuses %s', async (_, wrong) => {
	const db = await open(':memory:');
	await expect(insertLake(db, { ...LAKE, ...wrong })).rejects.toThrow('CHECK constraint failed');
});

test('readings stored before it was asked who had seen the holes count as seen', async () => {
	const path = join(folder(), 'frostledger.db');
	const old = await openDatabase(path);
	await insertLake(old, LAKE);
	await old.destroy();
	const file = new SqliteFile(path);
	// What is put on record names the column.
	for (const action of ['INSERT', 'UPDATE', 'DELETE']) {
		file.exec(`DROP TRIGGER "history of ${action} in reading"`);
	}
	file.exec(`ALTER TABLE reading DROP COLUMN second_hand;
		DELETE FROM kysely_migration WHERE name = '0002-second-hand';
		INSERT INTO reading (id, lake_id, site_id, day, kind, created_at)
			VALUES ('r-1', 'pond', 'main', '2027-01-10', 'measured', '')`);
	file.close();
	const db = await open(path);
	const found = await listReadingRows(db, { lakeId: 'pond', site: 'main' });
	expect(found).toMatchObject([{ id: 'r-1', secondHand: false }]);
	await expect(sql`UPDATE reading SET second_hand = 2`.execute(db)).rejects.toThrow('CHECK');
});

test('a file that is no database is named, with what to do', async () => {
	const path = join(folder(), 'frostledger.db');
	writeFileSync(path, 'this is a text, and longer than the header of a database. '.repeat(20));
	await expect(openDatabase(path)).rejects.toThrow(/frostledger\.db.*FROSTLEDGER_DATA/);
});
