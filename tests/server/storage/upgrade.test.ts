import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SqliteFile from 'libsql';
import { Kysely, Migrator, sql } from 'kysely';
import { expect, onTestFinished, test } from 'vitest';
import { listBackupFiles, nameOf } from '../../../src/lib/server/storage/backup/backup-folder.ts';
import { openDatabase } from '../../../src/lib/server/storage/database.ts';
import { migrations } from '../../../src/lib/server/storage/migrations.ts';
import { listReadingRows } from '../../../src/lib/server/storage/readings.ts';
import { changesOf } from '../../../src/lib/server/storage/schema-version.ts';
import { dialectOf } from '../../../src/lib/server/storage/sqlite-dialect.ts';
import { readSiteWinter } from '../../../src/lib/server/storage/winters.ts';

const FIRST_SCHEMA = readFileSync('tests/support/first-schema.sql', 'utf8');

function folder(): string {
	const path = mkdtempSync(join(tmpdir(), 'frostledger-upgrade-'));
	onTestFinished(() => rmSync(path, { recursive: true, force: true }));
	return path;
}

/** A folder with a database as the first version left it. */
function oldFolder(): { path: string; backups: string } {
	const at = folder();
	const path = join(at, 'frostledger.db');
	const file = new SqliteFile(path);
	file.exec(FIRST_SCHEMA);
	file.close();
	return { path, backups: join(at, 'backups') };
}

function asked<T>(path: string, ask: (file: SqliteFile.Database) => T): T {
	const file = new SqliteFile(path);
	try {
		return ask(file);
	} finally {
		file.close();
	}
}

async function schemaOf(path: string): Promise<unknown[]> {
	const db = await openDatabase(path);
	const { rows } = await sql`SELECT type, name, sql FROM sqlite_master ORDER BY name`.execute(db);
	await db.destroy();
	return rows;
}

test('a file of the first version has the schema of a new one once it is opened, and its rows', async () => {
	const { path } = oldFolder();
	expect(await schemaOf(path)).toEqual(await schemaOf(':memory:'));
	const db = await openDatabase(path);
	onTestFinished(() => db.destroy());
	const site = { lakeId: 'pond', site: 'main' };
	expect(await listReadingRows(db, site)).toMatchObject([
		{
			id: 'r-1',
			place: 'North bay',
			secondHand: false,
			holes: [{ total_m: 0.31 }, { white_m: 0.09 }]
		}
	]);
	expect(await readSiteWinter(db, site, '2026-27')).toMatchObject({
		freezeUpBy: '2026-11-24',
		events: [{ kind: 'cleared', snow_m: 0.05 }]
	});
});

test('before its schema is changed it is backed up beside itself, once', async () => {
	const { path, backups } = oldFolder();
	await (await openDatabase(path)).destroy();
	await (await openDatabase(path)).destroy();
	const files = listBackupFiles(backups);
	expect(files).toMatchObject([{ reason: 'schema', version: '0001' }]);
	const kept = join(backups, files[0]?.name ?? '');
	expect(asked(kept, changesOf)).toEqual(['0001-first-winter']);
	expect(asked(kept, (file) => file.prepare('SELECT count(*) AS n FROM hole').all())).toEqual([
		{ n: 2 }
	]);
});

test('a new file needs no backup', async () => {
	const at = folder();
	await (await openDatabase(join(at, 'frostledger.db'))).destroy();
	expect(existsSync(join(at, 'backups'))).toBe(false);
});

test('of such backups the newest five are kept, and nothing else is touched', async () => {
	const { path, backups } = oldFolder();
	await (await openDatabase(path)).destroy();
	const older = Array.from({ length: 7 }, (_, day) =>
		nameOf('schema', '0001', new Date(Date.UTC(2020, 0, day + 1)))
	);
	const others = [nameOf('asked', '0001', new Date(0)), 'notes.txt', 'schema-old.db'];
	for (const name of [...older, ...others]) writeFileSync(join(backups, name), '');
	asked(path, (file) => {
		// What is put on record names the column.
		for (const action of ['INSERT', 'UPDATE', 'DELETE']) {
			file.exec(`DROP TRIGGER "history of ${action} in reading"`);
		}
		file.exec(`DELETE FROM kysely_migration WHERE name = '0002-second-hand';
			ALTER TABLE reading DROP COLUMN second_hand`);
	});
	await (await openDatabase(path)).destroy();
	const left = readdirSync(backups);
	expect(left.filter((name) => name.startsWith('schema-0'))).toHaveLength(5);
	expect(left).toEqual(expect.arrayContaining([...others, older.at(-1)]));
	expect(left).not.toContain(older[3]);
});

test('a file of a newer version is refused in a sentence and left as it is', async () => {
	const { path } = oldFolder();
	asked(path, (file) =>
		file.exec(`INSERT INTO kysely_migration (name, timestamp)
			VALUES ('9999-of-another-day', '2099-01-01T00:00:00.000Z')`)
	);
	await expect(openDatabase(path)).rejects.toThrow(
		/frostledger\.db was written by a newer version.*9999-of-another-day.*left as it is/
	);
	expect(asked(path, changesOf)).toEqual(['0001-first-winter', '9999-of-another-day']);
	expect(existsSync(join(path, '..', 'backups'))).toBe(false);
});

test('without room for the backup the schema is not changed', async () => {
	const { path, backups } = oldFolder();
	writeFileSync(backups, 'a file where the folder should be');
	await expect(openDatabase(path)).rejects.toThrow(/older schema, and the backup before/);
	expect(asked(path, changesOf)).toEqual(['0001-first-winter']);
});

test('a change that breaks off takes those before it back as well', async () => {
	const file = new SqliteFile(':memory:');
	const db = new Kysely<never>({ dialect: dialectOf(file) });
	const changes = {
		'0001-good': { up: async () => void file.exec('CREATE TABLE good (a TEXT) STRICT') },
		'0002-bad': {
			up: async () => {
				file.exec('CREATE TABLE bad (a TEXT) STRICT');
				throw new Error('broken off');
			}
		}
	};
	const migrator = new Migrator({ db, provider: { getMigrations: async () => changes } });
	expect(String((await migrator.migrateToLatest()).error)).toContain('broken off');
	const tables = file.prepare(`SELECT name FROM sqlite_master WHERE name IN ('good', 'bad')`).all();
	expect(tables).toEqual([]);
	await db.destroy();
});

test('every migration has a name that begins with a number of its own', () => {
	const numbers = Object.keys(migrations).map((name) => name.slice(0, 5));
	expect(numbers.every((number) => /^\d{4}-$/.test(number))).toBe(true);
	expect(new Set(numbers).size).toBe(numbers.length);
});
