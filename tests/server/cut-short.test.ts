import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SqliteFile from 'libsql';
import { sql } from 'kysely';
import { build } from 'vite';
import { beforeAll, expect, onTestFinished, test } from 'vitest';
import { closeContext, openContext, keptAt } from '../../src/lib/server/context.ts';
import { restoreFrom } from '../../src/lib/server/services/backups.ts';
import { inventedLake } from '../support/fresh-context.ts';

const CHILD_FOLDER = join('node_modules', '.cache', 'frostledger-cut-short');
/** Few, as each child takes a second to start; `KILLS=200` makes a night of it. */
const KILLS = Number(process.env['KILLS'] ?? 8);
const LONGEST_MS = 120_000 + KILLS * 15_000;

beforeAll(async () => {
	const ssr = 'tests/support/cut-short-child.ts';
	const options = { ssr, outDir: CHILD_FOLDER, emptyOutDir: true, minify: false };
	await build({ configFile: false, logLevel: 'silent', build: options });
});

function folder(): string {
	const path = mkdtempSync(join(tmpdir(), 'frostledger-cut-'));
	onTestFinished(() => rmSync(path, { recursive: true, force: true }));
	return path;
}

interface Ran {
	lines: string[];
	wasKilled: boolean;
	/** From the first line to the second, or to the end. */
	took_ms: number;
}

/** Runs the child; kills it so long after its line `after`, if it runs for that long. */
function run(words: string[], kill?: { after: string; wait_ms: number }): Promise<Ran> {
	const child = spawn(process.execPath, [join(CHILD_FOLDER, 'cut-short-child.js'), ...words]);
	let output = '';
	let begun_ms = 0;
	let opened_ms = 0;
	let isTimed = false;
	child.stdout.on('data', (chunk: Buffer) => {
		output += chunk.toString();
		if (begun_ms === 0) begun_ms = performance.now();
		if (opened_ms === 0 && output.includes('open\n')) opened_ms = performance.now();
		if (!kill || isTimed || !output.includes(`${kill.after}\n`)) return;
		isTimed = true;
		setTimeout(() => child.kill('SIGKILL'), kill.wait_ms);
	});
	let errors = '';
	child.stderr.on('data', (chunk: Buffer) => (errors += chunk.toString()));
	return new Promise((done) => {
		child.once('close', () => {
			expect(errors).toBe('');
			const lines = output.split('\n').slice(0, -1);
			const took_ms = (opened_ms || performance.now()) - begun_ms;
			done({ lines, wasKilled: child.signalCode === 'SIGKILL', took_ms });
		});
	});
}

function ask<T>(path: string, use: (file: SqliteFile.Database) => T): T {
	const file = new SqliteFile(path);
	try {
		return use(file);
	} finally {
		file.close();
	}
}

const integrity = (file: SqliteFile.Database) => file.prepare('PRAGMA integrity_check').all();
const changes = (file: SqliteFile.Database) =>
	(file.prepare('SELECT name FROM kysely_migration ORDER BY name').all() as { name: string }[]).map(
		({ name }) => name
	);

test(
	'killed while its schema is changed, a database has the old one or the new',
	async () => {
		const old = folder();
		ask(join(old, 'frostledger.db'), (file) => {
			file.exec(readFileSync('tests/support/first-schema.sql', 'utf8'));
			file.exec(`WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < 150000)
			INSERT INTO weather_hour (lake_id, at_s, air_degC) SELECT 'pond', i * 3600, -5 FROM n`);
		});
		const whole = folder();
		cpSync(old, whole, { recursive: true });
		const { took_ms } = await run(['open', whole]);
		const after = ask(join(whole, 'frostledger.db'), changes);
		const found = { old: 0, new: 0 };
		for (let kill = 0; kill < KILLS; kill++) {
			const data = folder();
			cpSync(old, data, { recursive: true });
			await run(['open', data], { after: 'begin', wait_ms: Math.random() * took_ms * 1.1 });
			const path = join(data, 'frostledger.db');
			expect(ask(path, integrity)).toEqual([{ integrity_check: 'ok' }]);
			const has = ask(path, changes);
			expect([['0001-first-winter'], after]).toContainEqual(has);
			found[has.length === 1 ? 'old' : 'new']++;
			const hasColumn = ask(path, (file) =>
				file.prepare(`SELECT 1 FROM pragma_table_info('reading') WHERE name = 'second_hand'`).all()
			);
			expect(hasColumn).toHaveLength(has.length === 1 ? 0 : 1);
			for (const name of namesIn(join(data, 'backups')).filter((each) => each.endsWith('.db'))) {
				const backup = join(data, 'backups', name);
				expect(ask(backup, changes)).toEqual(['0001-first-winter']);
				expect(ask(backup, integrity)).toEqual([{ integrity_check: 'ok' }]);
			}
			await closeContext(await openContext({ FROSTLEDGER_DATA: data }));
			expect(ask(path, changes)).toEqual(after);
		}
		expect(found.old, 'kills before the change was through').toBeGreaterThan(0);
	},
	LONGEST_MS
);

test(
	'killed in the middle of backups, none of them is half, and nothing stored is lost',
	async () => {
		const data = folder();
		const aside = folder();
		const first = await openContext({ FROSTLEDGER_DATA: data });
		await inventedLake(first);
		await sql`WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < 60000)
		INSERT INTO weather_hour (lake_id, at_s, air_degC) SELECT id, i * 3600, -5 FROM n, lake`.execute(
			first.db
		);
		await closeContext(first);
		let stored = 0;
		let halves = 0;
		for (let kill = 0; kill < KILLS; kill++) {
			const wait_ms = Math.random() * 600;
			const { lines, wasKilled } = await run(['backup', data, aside], { after: 'backup', wait_ms });
			expect(wasKilled).toBe(true);
			stored += lines.filter((line) => line.startsWith('stored')).length;
			expect(ask(join(data, 'frostledger.db'), integrity)).toEqual([{ integrity_check: 'ok' }]);
			halves = [...namesIn(aside), ...namesIn(join(data, 'backups'))].filter((name) =>
				/\.part-[0-9a-f]{8}$/.test(name)
			).length;
		}
		expect(halves, 'copies that the kill left unfinished').toBeGreaterThan(0);
		const backups = [
			...namesIn(aside).map((name) => join(aside, name)),
			...namesIn(join(data, 'backups')).map((name) => join(data, 'backups', name))
		].filter((path) => path.endsWith('.db'));
		expect(backups.length).toBeGreaterThan(Math.min(KILLS, 10) - 1);
		for (const path of backups) {
			expect(ask(path, integrity), path).toEqual([{ integrity_check: 'ok' }]);
			expect(ask(path, readings) % 2, path).toBe(0);
		}
		const path = join(data, 'frostledger.db');
		expect(ask(path, readings)).toBeGreaterThanOrEqual(stored * 2);
		await restored(backups.at(-1) ?? '');
	},
	LONGEST_MS
);

/** A database that a killed app has left is replaced with its last changes put aside. */
test('what a killed app left is kept whole when a backup takes its place', async () => {
	const data = folder();
	const first = await openContext({ FROSTLEDGER_DATA: data });
	await inventedLake(first);
	await closeContext(first);
	const aside = folder();
	const { lines } = await run(['backup', data, aside], { after: 'stored 20', wait_ms: 0 });
	const stored = lines.filter((line) => line.startsWith('stored')).length;
	const moved = folder();
	cpSync(data, moved, { recursive: true });
	const [name = ''] = namesIn(join(moved, 'backups')).filter((each) => each.endsWith('.db'));
	const place = keptAt({ FROSTLEDGER_DATA: moved });
	if (!place) throw new Error('no place');
	const { replaced } = await restoreFrom(join(moved, 'backups', name), place, { replace: true });
	expect(ask(replaced ?? '', readings)).toBeGreaterThanOrEqual(stored * 2);
	expect(namesIn(moved)).toEqual(['backups', 'frostledger.db']);
}, 60_000);

async function restored(backup: string): Promise<void> {
	const data = join(folder(), 'new');
	const place = keptAt({ FROSTLEDGER_DATA: data });
	if (!place) throw new Error('no place');
	await restoreFrom(backup, place, { replace: false });
	const ctx = await openContext({ FROSTLEDGER_DATA: data });
	await closeContext(ctx);
}

const readings = (file: SqliteFile.Database) =>
	(file.prepare('SELECT count(*) AS n FROM reading').get() as { n: number }).n;

function namesIn(path: string): string[] {
	mkdirSync(path, { recursive: true });
	return readdirSync(path).toSorted();
}
