import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { expect, onTestFinished, test } from 'vitest';
import {
	closeContext,
	openContext,
	keptAt,
	type Context
} from '../../../src/lib/server/context.ts';
import {
	backUpTo,
	listBackups,
	makeBackup,
	restoreFrom,
	sendBackup
} from '../../../src/lib/server/services/backups.ts';
import { listLakes } from '../../../src/lib/server/services/lakes.ts';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import { addReadings, listReadings } from '../../../src/lib/server/services/readings.ts';
import { newSource } from '../../../src/lib/server/services/sources/input.ts';
import { createSource } from '../../../src/lib/server/services/sources/sources.ts';
import { KEY_TABLES } from '../../../src/lib/server/storage/backup/write-backup.ts';
import { inventedLake } from '../../support/fresh-context.ts';
import { inventedSource } from '../../support/invented-source.ts';

function folder(): string {
	const path = mkdtempSync(join(tmpdir(), 'frostledger-backups-'));
	onTestFinished(() => rmSync(path, { recursive: true, force: true }));
	return path;
}

async function open(data: string): Promise<Context> {
	const ctx = await openContext({ FROSTLEDGER_DATA: data });
	onTestFinished(() => closeContext(ctx));
	return ctx;
}

function place(data: string) {
	const found = keptAt({ FROSTLEDGER_DATA: data });
	if (!found) throw new Error('no place');
	return found;
}

const hole = (remark: string) =>
	readingInput.parse({ on: '2026-01-10', kind: 'measured', holes: [{ total_m: 0.3 }], remark });

test('a backup is restored onto an empty machine, lake, readings and all', async () => {
	const ctx = await open(folder());
	const { id } = await inventedLake(ctx);
	await addReadings(ctx, id, 'main', [hole('kept')]);
	const carried = join(folder(), 'winter.db');
	await backUpTo(place(ctx.place?.folder ?? ''), carried);
	const other = join(folder(), 'not', 'yet', 'there');
	expect(await restoreFrom(carried, place(other), { replace: false })).toEqual({ replaced: null });
	const restored = await open(other);
	expect(await listLakes(restored)).toEqual(await listLakes(ctx));
	expect(await listReadings(restored, id, 'main')).toEqual(await listReadings(ctx, id, 'main'));
});

test('while readings are written a backup holds all that were answered before it, none by halves', async () => {
	const ctx = await open(folder());
	const { id } = await inventedLake(ctx);
	let written = 0;
	const over = new AbortController();
	const writing = (async () => {
		while (!over.signal.aborted) {
			await addReadings(ctx, id, 'main', [hole(`a${written}`), hole(`b${written}`)]);
			written++;
			await new Promise((resolve) => setImmediate(resolve));
		}
	})();
	const taken: { before: number; after: number; name: string }[] = [];
	for (let round = 0; round < 5; round++) {
		const before = written;
		const { name } = await makeBackup(ctx);
		taken.push({ before, after: written, name });
	}
	over.abort();
	await writing;
	expect(written).toBeGreaterThan(5);
	for (const { before, after, name } of taken) {
		const data = folder();
		const file = join(ctx.place?.folder ?? '', 'backups', name);
		await restoreFrom(file, place(data), { replace: false });
		const restored = await open(data);
		const readings = await listReadings(restored, id, 'main');
		expect(readings.length % 2).toBe(0);
		expect(readings.length / 2).toBeGreaterThanOrEqual(before);
		expect(readings.length / 2).toBeLessThanOrEqual(after + 1);
	}
});

test('whoever asks while a backup is made gets that one; the newest ten are kept', async () => {
	const data = folder();
	const ctx = await open(data);
	let minute = 0;
	const at = () => new Date(Date.UTC(2027, 0, 1, 0, minute));
	const clocked = { ...ctx, now: at };
	const [first, second] = await Promise.all([makeBackup(clocked), makeBackup(clocked)]);
	expect(first).toEqual(second);
	for (minute = 1; minute < 12; minute++) await makeBackup(clocked);
	expect(listBackups(ctx)).toHaveLength(10);
	expect(listBackups(ctx)[0]).toMatchObject({ reason: 'asked', at: new Date('2027-01-01T00:11Z') });
	expect(readdirSync(join(data, 'backups'))).not.toContain(first.name);
});

/** One of each way in; tells what is stored of them. */
async function everyDoor({ db }: Context, lakeId: string): Promise<string[]> {
	const hash = (letter: string) => letter.repeat(64);
	const passphrase = `scrypt$${'h4sh'.repeat(20)}`;
	await sql`INSERT INTO passphrase VALUES (1, ${passphrase}, '')`.execute(db);
	await sql`INSERT INTO person VALUES ('p', 'Invented Helper', ${hash('a')}, 0, '', '')`.execute(
		db
	);
	await sql`INSERT INTO guest_link VALUES ('g', ${lakeId}, 'G', ${hash('b')}, 0, '', '')`.execute(
		db
	);
	await sql`INSERT INTO session VALUES (${hash('c')}, 'owner', NULL, NULL, '', '')`.execute(db);
	await sql`INSERT INTO api_token VALUES ('t', 'T', ${hash('d')}, NULL, '', '')`.execute(db);
	await sql`INSERT INTO known_device VALUES (${hash('e')}, '')`.execute(db);
	return [passphrase, ...['a', 'b', 'c', 'd', 'e'].map(hash)];
}

test('what is sent over the network has no keys in it, the file beside the database has', async () => {
	const data = folder();
	const ctx = await open(data);
	const key = 'k3y-that-nobody-may-see';
	await createSource(ctx, newSource.parse({ source: inventedSource({ needsKey: true }), key }));
	const lake = await inventedLake(ctx);
	const address = 'https://hook.invalid/s3cret-in-a-path';
	await sql`INSERT INTO webhook (lake_id, address, key, kinds, made_at)
		VALUES (${lake.id}, ${address}, ${'w3bhook'.repeat(8)}, '[]', '')`.execute(ctx.db);
	await sql`INSERT INTO webhook_outbox (id, lake_id, body, made_at)
		VALUES ('o', ${lake.id}, '{"to":"nobody-else"}', '')`.execute(ctx.db);
	const doors = await everyDoor(ctx, lake.id);
	const { name } = await makeBackup(ctx);
	const kept = readFileSync(join(data, 'backups', name));
	for (const secret of [key, ...doors]) expect(kept.includes(secret), secret).toBe(true);
	const { stream, size_B } = await sendBackup(ctx, name);
	const sent = Buffer.from(await new Response(stream).arrayBuffer());
	expect(sent.byteLength).toBe(size_B);
	for (const secret of [key, address, 'w3bhook', 'nobody-else', ...doors]) {
		expect(sent.includes(secret), secret).toBe(false);
	}
	expect(sent.subarray(0, 15).toString()).toBe('SQLite format 3');
	await expect.poll(() => readdirSync(join(data, 'backups'))).toEqual([name]);
	await expect(sendBackup(ctx, '../frostledger.db')).rejects.toThrow('No backup');
});

test('every column that may hold a key is known to the download, or known to be harmless', async () => {
	const ctx = await open(folder());
	const { rows } = await sql<{ name: string }>`
		SELECT t.name || '.' || c.name AS name FROM pragma_table_list t, pragma_table_info(t.name) c
		WHERE t.schema = 'main' AND t.type = 'table'
			AND (c.name LIKE '%key%' OR c.name LIKE '%secret%' OR c.name LIKE '%token%'
				OR c.name LIKE '%passw%' OR c.name LIKE '%hash%' OR c.name LIKE '%address%')`.execute(ctx.db);
	const harmless = [
		// What a row is known by.
		'history.key',
		'telling_date.key',
		// What it is the hash of is nowhere.
		'telling_feed.secret_hash'
	];
	const left = rows
		.map(({ name }) => name)
		.filter((name) => !KEY_TABLES.some((table) => name.startsWith(`${table}.`)));
	expect(left.toSorted()).toEqual(harmless);
});

test('a folder that has a database is not restored into, unless that is asked for', async () => {
	const ctx = await open(folder());
	await inventedLake(ctx, { name: 'New Lake' });
	const file = join(folder(), 'new.db');
	await backUpTo(place(ctx.place?.folder ?? ''), file);
	const old = await open(folder());
	await inventedLake(old, { name: 'Old Lake' });
	const oldFile = join(folder(), 'old.db');
	await backUpTo(place(old.place?.folder ?? ''), oldFile);
	const data = folder();
	await restoreFrom(oldFile, place(data), { replace: false });
	await expect(restoreFrom(file, place(data), { replace: false })).rejects.toThrow(/--replace/);
	const { replaced } = await restoreFrom(file, place(data), { replace: true });
	expect((await listLakes(await open(data))).map(({ name }) => name)).toEqual(['New Lake']);
	const back = folder();
	await restoreFrom(replaced ?? '', place(back), { replace: false });
	expect((await listLakes(await open(back))).map(({ name }) => name)).toEqual(['Old Lake']);
});

test('a database in use is not replaced', async () => {
	const running = await open(folder());
	await inventedLake(running);
	const file = join(folder(), 'copy.db');
	const at = place(running.place?.folder ?? '');
	await backUpTo(at, file);
	await expect(restoreFrom(file, at, { replace: true })).rejects.toThrow(
		/in use. Stop Frostledger/
	);
	expect(await listLakes(running)).toHaveLength(1);
});

test('a damaged database makes way for a backup and is kept', async () => {
	const ctx = await open(folder());
	await inventedLake(ctx);
	const file = join(folder(), 'copy.db');
	await backUpTo(place(ctx.place?.folder ?? ''), file);
	const data = folder();
	const garbage = 'this was a database once. '.repeat(200);
	writeFileSync(join(data, 'frostledger.db'), garbage);
	writeFileSync(join(data, 'frostledger.db-wal'), 'and this its changes');
	const { replaced } = await restoreFrom(file, place(data), { replace: true });
	expect(readFileSync(replaced ?? '', 'utf8')).toBe(garbage);
	expect(existsSync(join(data, 'frostledger.db-wal'))).toBe(false);
	expect(await listLakes(await open(data))).toHaveLength(1);
});

test.each([
	[
		'a text',
		(path: string) => writeFileSync(path, 'no database, but long. '.repeat(100)),
		'not a database'
	],
	['nothing', () => {}, 'There is no file'],
	['an empty file', (path: string) => writeFileSync(path, ''), 'not a database of Frostledger']
])('%s is not restored', async (_, make, why) => {
	const source = join(folder(), 'backup.db');
	make(source);
	const data = folder();
	await expect(restoreFrom(source, place(data), { replace: false })).rejects.toThrow(why);
	expect(readdirSync(data)).toEqual([]);
});

test('a damaged backup is not restored', async () => {
	const ctx = await open(folder());
	const { id } = await inventedLake(ctx);
	await addReadings(
		ctx,
		id,
		'main',
		Array.from({ length: 400 }, (_, n) => hole(`reading ${n}`))
	);
	const file = join(folder(), 'copy.db');
	await backUpTo(place(ctx.place?.folder ?? ''), file);
	const bytes = readFileSync(file);
	for (let at = 8192; at < bytes.length; at += 4096) bytes.fill(0x55, at, at + 64);
	writeFileSync(file, bytes);
	const data = folder();
	await expect(restoreFrom(file, place(data), { replace: false })).rejects.toThrow();
	expect(readdirSync(data)).toEqual([]);
});

test('an existing file is not written over, and what is in memory only cannot be backed up', async () => {
	const ctx = await open(folder());
	const taken = join(folder(), 'taken.db');
	writeFileSync(taken, 'mine');
	await expect(backUpTo(place(ctx.place?.folder ?? ''), taken)).rejects.toThrow('exists already');
	expect(readFileSync(taken, 'utf8')).toBe('mine');
	const memory = await openContext({ FROSTLEDGER_DATA: ':memory:' });
	onTestFinished(() => closeContext(memory));
	expect(() => makeBackup(memory)).toThrow('in memory only');
});
