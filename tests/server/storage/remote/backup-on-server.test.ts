import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import SqliteFile from 'libsql';
import { describe, expect, onTestFinished, test } from 'vitest';
import {
	closeContext,
	keptAt,
	openContext,
	type Context,
	type Kept
} from '../../../../src/lib/server/context.ts';
import {
	backUpTo,
	listBackups,
	makeBackup,
	restoreFrom,
	sendBackup
} from '../../../../src/lib/server/services/backups.ts';
import { listHistory, writingAs } from '../../../../src/lib/server/services/history/history.ts';
import { importWeather } from '../../../../src/lib/server/services/import-weather.ts';
import { listLakes } from '../../../../src/lib/server/services/lakes.ts';
import { readingInput } from '../../../../src/lib/server/services/reading-input.ts';
import { addReadings, listReadings } from '../../../../src/lib/server/services/readings.ts';
import { newSource } from '../../../../src/lib/server/services/sources/input.ts';
import { createSource } from '../../../../src/lib/server/services/sources/sources.ts';
import { troubleOf } from '../../../../src/lib/server/services/storage-trouble.ts';
import { listChanges, versionOf } from '../../../../src/lib/server/storage/schema-version.ts';
import { inventedLake } from '../../../support/fresh-context.ts';
import { inventedSource } from '../../../support/invented-source.ts';
import { hasLibsqlServer, libsqlServer } from '../../../support/libsql-server.ts';
import { inPieces, winterCsv } from '../../../support/winter-csv.ts';

/** The last change of the schema, which one test takes back. */
const NEWEST = '0019-telling-sites';

function folder(): string {
	const path = mkdtempSync(join(tmpdir(), 'frostledger-server-backups-'));
	onTestFinished(() => rmSync(path, { recursive: true, force: true }));
	return path;
}

interface Side {
	environment: Record<string, string>;
	kept: Kept;
	url: string;
}

/** A server with an empty database, and a data folder for its backups. */
async function side(words: string[] = []): Promise<Side> {
	const server = await libsqlServer(words);
	onTestFinished(() => server.remove());
	const environment = { FROSTLEDGER_DATABASE: server.url, FROSTLEDGER_DATA: folder() };
	const kept = keptAt(environment);
	if (!kept) throw new Error('nothing is kept');
	return { environment, kept, url: server.url };
}

async function open({ environment }: Pick<Side, 'environment'>): Promise<Context> {
	const ctx = await openContext(environment);
	onTestFinished(() => closeContext(ctx));
	return { ...ctx, now: () => new Date('2027-02-10T12:00:00Z') };
}

const hole = (remark: string) =>
	readingInput.parse({ on: '2027-01-10', kind: 'measured', holes: [{ total_m: 0.3 }], remark });

async function filled(ctx: Context): Promise<string> {
	const { id } = await inventedLake(ctx);
	await importWeather(ctx, id, inPieces(winterCsv('2026-10-01', 100)));
	await createSource(
		ctx,
		newSource.parse({ source: inventedSource({ needsKey: true }), key: 'k3y' })
	);
	await writingAs({ name: 'Invented Helper', at: ctx.now() }, () =>
		addReadings(ctx, id, 'main', [hole('“ä” \u{1F9CA}')])
	);
	return id;
}

/** All rows of all tables, and what else there is; the rows that a start writes are left out. */
function contentOf(path: string): Record<string, unknown> {
	const file = new SqliteFile(path);
	const parts = file
		.prepare(
			`SELECT type, name, sql FROM sqlite_master
			WHERE tbl_name NOT LIKE 'staged%' AND tbl_name NOT LIKE 'libsql%' ORDER BY type, name`
		)
		.all() as { type: string; name: string; sql: string }[];
	const tables = parts.filter(({ type, name }) => type === 'table' && name !== 'lease');
	const rows = tables.map(({ name }): [string, unknown] => [
		name,
		file.prepare(`SELECT * FROM "${name}"`).raw().all()
	]);
	file.close();
	return { parts, ...Object.fromEntries(rows) };
}

/** Opening an empty server takes hundreds of statements, each a request. */
const SLOW_MS = 120_000;

describe.runIf(hasLibsqlServer)(
	'the backup of a database on a server',
	{ timeout: SLOW_MS },
	() => {
		test('is one moment of it while others write', async () => {
			const from = await side();
			const [ctx, other] = [await open(from), await open(from)];
			const id = await filled(ctx);
			const written = { isOver: false, pairs: 0 };
			const writing = (async () => {
				for (; !written.isOver; written.pairs++) {
					await addReadings(other, id, 'main', [hole('one'), hole('two')]);
					await new Promise((done) => setTimeout(done, 20));
				}
			})();
			await expect.poll(() => written.pairs, { timeout: 20_000 }).toBeGreaterThan(2);
			const before = written.pairs;
			const { name, version } = await makeBackup(ctx);
			written.isOver = true;
			await writing;
			expect(version).toBe(versionOf([NEWEST]));
			expect(listBackups(ctx)).toMatchObject([{ name, reason: 'asked' }]);
			const path = join(from.kept.folder, 'backups', name);
			const file = new SqliteFile(path);
			const counted = file
				.prepare('SELECT remark, count(*) AS n FROM reading GROUP BY remark')
				.all();
			expect(file.prepare('PRAGMA integrity_check').all()).toEqual([{ integrity_check: 'ok' }]);
			file.close();
			const [one, two] = ['one', 'two'].map(
				(remark) =>
					(counted as { remark: string; n: number }[]).find((row) => row.remark === remark)?.n
			);
			expect(one).toBe(two);
			expect(one).toBeGreaterThanOrEqual(before);
		});

		test('is restored onto an empty one as it was, and onto no other', async () => {
			const [from, to] = [await side(), await side()];
			const ctx = await open(from);
			const id = await filled(ctx);
			const path = join(folder(), 'winter.db');
			await backUpTo(from.kept, path);
			expect(await restoreFrom(path, to.kept, { replace: false })).toEqual({ replaced: null });
			const back = join(folder(), 'back.db');
			await backUpTo(to.kept, back);
			expect(contentOf(back)).toEqual(contentOf(path));
			const restored = await open(to);
			expect(await listLakes(restored)).toEqual(await listLakes(ctx));
			const entries = (await listHistory(restored, id)).entries;
			expect(entries).toMatchObject([{ who: 'Invented Helper' }]);
			await writingAs({ name: 'After', at: ctx.now() }, () =>
				addReadings(restored, id, 'main', [hole('after')])
			);
			expect((await listHistory(restored, id)).entries[0]?.who).toBe('After');
			// A database that is not empty is left as it is.
			const onto = restoreFrom(path, to.kept, { replace: true });
			await expect(onto).rejects.toThrow(/on 127\.0\.0\.1:\d+ is not empty.*FROSTLEDGER_DATABASE/);
			expect((await listHistory(restored, id)).entries[0]?.who).toBe('After');
		});

		test('goes into a file, that of a file onto a server, and none of it with keys to others', async () => {
			const from = await side();
			const ctx = await open(from);
			const id = await filled(ctx);
			const backup = join(folder(), 'winter.db');
			await backUpTo(from.kept, backup);
			const { stream } = await sendBackup(ctx, (await makeBackup(ctx)).name);
			const sent = Buffer.from(await new Response(stream).arrayBuffer());
			expect(sent.includes('Invented Helper')).toBe(true);
			expect(sent.includes('k3y')).toBe(false);
			const data = folder();
			const local = keptAt({ FROSTLEDGER_DATA: data });
			if (!local) throw new Error('nothing is kept');
			await restoreFrom(backup, local, { replace: false });
			const inFile = await open({ environment: { FROSTLEDGER_DATA: data } });
			expect(await listReadings(inFile, id, 'main')).toMatchObject([{ remark: '“ä” \u{1F9CA}' }]);
			const again = join(folder(), 'again.db');
			await backUpTo(local, again);
			const to = await side();
			await restoreFrom(again, to.kept, { replace: false });
			expect(await listReadings(await open(to), id, 'main')).toHaveLength(1);
		});

		test('is read in smaller pieces where the server does not answer as much at once', async () => {
			const from = await side(['--max-response-size', '200KB']);
			const ctx = await open(from);
			await sql`CREATE TABLE long_text (id INTEGER PRIMARY KEY, text TEXT, bytes BLOB)`.execute(
				ctx.db
			);
			for (let id = 1; id <= 12; id++) {
				const row = sql`(${id * 7}, ${String(id).repeat(50_000)}, randomblob(9))`;
				await sql`INSERT INTO long_text VALUES ${row}`.execute(ctx.db);
			}
			const backup = join(folder(), 'long.db');
			await backUpTo(from.kept, backup);
			const file = new SqliteFile(backup);
			const found = file.prepare('SELECT id, length(text) AS n, length(bytes) AS b FROM long_text');
			expect(found.all()).toHaveLength(12);
			expect(found.all().at(-1)).toEqual({ id: 84, n: 100_000, b: 9 });
			file.close();
		});

		test('is made before the schema is changed', async () => {
			const from = await side();
			const first = await open(from);
			const id = await filled(first);
			await sql`DELETE FROM kysely_migration WHERE name = ${NEWEST}`.execute(first.db);
			await sql`ALTER TABLE telling DROP COLUMN sites`.execute(first.db);
			const blocked = { ...from.environment, FROSTLEDGER_DATA: folder() };
			writeFileSync(join(blocked.FROSTLEDGER_DATA, 'backups'), 'in the way');
			await expect(openContext(blocked)).rejects.toThrow(/backup before it is changed failed/);
			expect(await listChanges(first.db)).not.toContain(NEWEST);
			const ctx = await open(from);
			const [made] = listBackups(ctx);
			expect(made).toMatchObject({ reason: 'schema', version: '0017' });
			expect(await listReadings(ctx, id, 'main')).toHaveLength(1);
			expect(await listChanges(ctx.db)).toContain(NEWEST);
		});

		test('of what is no database of ours, or is not there, is refused in a sentence', async () => {
			const from = await side();
			const target = join(folder(), 'none.db');
			const asked = backUpTo(from.kept, target);
			await expect(asked).rejects.toThrow(/no database of Frostledger on 127\.0\.0\.1/);
			const environment = {
				FROSTLEDGER_DATABASE: 'http://127.0.0.1:9',
				FROSTLEDGER_DATA: folder()
			};
			const gone = keptAt(environment);
			if (!gone) throw new Error('nothing is kept');
			const refused = await backUpTo(gone, target).catch((cause: unknown) => cause);
			expect(troubleOf(refused)).toMatch(/does not answer/);
			expect(readdirSync(join(target, '..'))).toEqual([]);
			await expect(restoreFrom('package.json', from.kept, { replace: false })).rejects.toThrow(
				/not a database/
			);
		});
	}
);
