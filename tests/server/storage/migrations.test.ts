import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SqliteFile from 'libsql';
import { Kysely, Migrator, sql, SqliteDialect, type Migration, type SqliteDatabase } from 'kysely';
import { expect, onTestFinished, test } from 'vitest';
import { closeContext, openContext } from '../../../src/lib/server/context.ts';
import { listWeather } from '../../../src/lib/server/services/weather-csv.ts';
import { openDatabase } from '../../../src/lib/server/storage/database.ts';
import { migrations } from '../../../src/lib/server/storage/migrations.ts';
import type { Database } from '../../../src/lib/server/storage/schema.ts';

/** A file that has been brought up to some of the migrations only. */
async function olderFile(names: readonly string[]): Promise<{ folder: string; path: string }> {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-migrations-'));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	const path = join(folder, 'frostledger.db');
	const database = new SqliteFile(path) as unknown as SqliteDatabase;
	const db = new Kysely<Database>({ dialect: new SqliteDialect({ database }) });
	const some = Object.fromEntries(names.map((name) => [name, migrations[name] as Migration]));
	const { error } = await new Migrator({
		db,
		provider: { getMigrations: async () => some },
		allowUnorderedMigrations: true
	}).migrateToLatest();
	expect(error).toBeUndefined();
	if (names.length === 1) await storeWeather(db);
	await db.destroy();
	return { folder, path };
}

async function storeWeather(db: Kysely<Database>): Promise<void> {
	await sql`INSERT INTO lake (id, name, latitude, longitude, water, time_zone, chart_set, is_invented, created_at)
		VALUES ('pond', 'Pond', 50, -40, 'lake', 'Etc/GMT+3', 'strict', 0, '2027-01-01T00:00:00.000Z')`.execute(
		db
	);
	await sql`INSERT INTO weather_day (lake_id, basis, day, air_degC, precipitation_kg_m2) VALUES
		('pond', 'daily', '2027-01-01', -4, 2), ('pond', 'daily', '2027-01-02', -6, NULL)`.execute(db);
	for (let hour = 0; hour < 24; hour++) {
		const at_s = Date.UTC(2027, 0, 2, 3 + hour) / 1000;
		await sql`INSERT INTO weather_hour (lake_id, at_s, air_degC) VALUES ('pond', ${at_s}, -9)`.execute(
			db
		);
	}
}

test('weather that was stored before there were sources is shown as it was', async () => {
	const { folder } = await olderFile(['0001-first-winter']);
	const ctx = await openContext({ FROSTLEDGER_DATA: folder });
	onTestFinished(() => closeContext(ctx));
	expect(await listWeather(ctx, 'pond')).toMatchObject([
		{ on: '2027-01-01', source: 'observed', air_degC: -4, precipitation_kg_m2: 2 },
		{ on: '2027-01-02', source: 'observed', air_degC: -9, freezing_degCd: 9, aboveFreezing_h: 0 }
	]);
});

test('two changes that were written side by side come in either order', async () => {
	const schemaOf = async (path: string) => {
		const db = await openDatabase(path);
		const { rows } = await sql`SELECT type, name, sql FROM sqlite_master ORDER BY name`.execute(db);
		await db.destroy();
		return rows;
	};
	const { path } = await olderFile(['0001-first-winter', '0003-weather-sources']);
	expect(await schemaOf(path)).toEqual(await schemaOf(':memory:'));
});
