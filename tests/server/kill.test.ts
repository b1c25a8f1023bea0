import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import SqliteFile from 'libsql';
import { build } from 'vite';
import { sql } from 'kysely';
import { beforeAll, expect, onTestFinished, test } from 'vitest';
import { addDays } from '../../src/lib/model/calendar.ts';
import { closeContext, openContext, type Context } from '../../src/lib/server/context.ts';
import { inventedLake } from '../support/fresh-context.ts';
import {
	DAYS_OF_ONE,
	firstDayOf,
	HOLES_OF_ONE,
	HOURLY_DAYS_OF_ONE,
	nameOf,
	READINGS_OF_ONE
} from '../support/kill-work.ts';

/** On one database, whose years would not do for many more. */
const KILLS = 50;
/** `KILLS=200` makes a night of it. */
const ROUNDS = Math.ceil(Number(process.env['KILLS'] ?? KILLS) / KILLS);
/** Jobs that a child gets done, at most, before the one that the kill falls into. */
const MOST_DONE = 3;
/** Inside node_modules, where the child finds the packages. */
const CHILD_FOLDER = join('node_modules', '.cache', 'frostledger-kill');

beforeAll(buildChild);

test.for(Array.from({ length: ROUNDS }, (_, round) => round + 1))(
	'killed fifty times, it keeps what it acknowledged and nothing by halves (round %i)',
	{ timeout: 900_000 },
	async () => {
		const folder = mkdtempSync(join(tmpdir(), 'frostledger-kill-'));
		onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
		await makeLake(folder);
		const acknowledged: number[] = [];
		let interrupted = 0;
		let next = 0;
		for (let kill = 0; kill < KILLS; kill++) {
			const { done, started } = await runAndKill(folder, next);
			acknowledged.push(...done);
			if (!done.includes(started)) interrupted++;
			expect(integrityOf(join(folder, 'frostledger.db'))).toEqual([{ integrity_check: 'ok' }]);
			next = started + 1;
		}
		const ctx = await openContext({ FROSTLEDGER_DATA: folder });
		onTestFinished(() => closeContext(ctx));
		expect(await ctx.db.selectFrom('writer').selectAll().execute()).toEqual([]);
		expect(await integrity(ctx)).toEqual(['ok']);
		for (let job = 0; job < next; job++) {
			const stored = await storedOf(ctx, job);
			expect(['whole', 'absent'], `job ${job}`).toContain(stored);
			if (acknowledged.includes(job)) expect(stored, `acknowledged job ${job}`).toBe('whole');
			expect(await onRecord(ctx, job), `record of job ${job}`).toBe(
				stored === 'absent' ? 0 : rowsOnRecord(job)
			);
		}
		expect(interrupted, 'kills that hit a job under way').toBeGreaterThan(KILLS / 2);
		expect(acknowledged.length, 'jobs that were done').toBeGreaterThan(KILLS / 2);
	}
);

function integrityOf(path: string): unknown {
	const file = new SqliteFile(path);
	try {
		return file.prepare('PRAGMA integrity_check').all();
	} finally {
		file.close();
	}
}

/** A child that starts fifty times is not compiled fifty times. */
async function buildChild(): Promise<void> {
	const ssr = 'tests/support/kill-child.ts';
	const options = { ssr, outDir: CHILD_FOLDER, emptyOutDir: true, minify: false };
	await build({ configFile: false, logLevel: 'silent', build: options });
}

async function makeLake(folder: string): Promise<void> {
	const ctx = await openContext({ FROSTLEDGER_DATA: folder });
	await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	await closeContext(ctx);
}

/** How long a job of each kind took when it was last seen to its end. */
const took_ms = [50, 50, 50];

/** Jobs that a child acknowledged before it was killed, and the last one that it began. */
async function runAndKill(folder: string, first: number) {
	const child = spawn(
		process.execPath,
		[join(CHILD_FOLDER, 'kill-child.js'), folder, String(first)],
		{ stdio: ['ignore', 'pipe', 'inherit'] }
	);
	const fatal = first + Math.floor(Math.random() * (MOST_DONE + 1));
	const done: number[] = [];
	let started = first;
	let since_ms = 0;
	for await (const line of createInterface({ input: child.stdout })) {
		const [word, text] = line.split(' ');
		const job = Number(text);
		if (word === 'start') {
			started = job;
			since_ms = performance.now();
			const wait_ms = Math.random() * (took_ms[job % 3] ?? 0);
			if (job === fatal) setTimeout(() => child.kill('SIGKILL'), wait_ms);
		} else if (word === 'done') {
			done.push(job);
			took_ms[job % 3] = performance.now() - since_ms;
		}
	}
	await ended(child);
	expect(child.signalCode).toBe('SIGKILL');
	return { done, started };
}

function ended(child: ChildProcess): Promise<void> {
	if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve();
	return new Promise((resolve) => child.once('exit', () => resolve()));
}

async function integrity({ db }: Context): Promise<string[]> {
	const { rows } = await sql<{ integrity_check: string }>`PRAGMA integrity_check`.execute(db);
	const { rows: orphans } = await sql`PRAGMA foreign_key_check`.execute(db);
	expect(orphans).toEqual([]);
	return rows.map((row) => row.integrity_check);
}

async function storedOf(ctx: Context, job: number): Promise<string> {
	const counts = job % 3 === 2 ? await readings(ctx, job) : await weather(ctx, job);
	if (counts.every(({ found }) => found === 0)) return 'absent';
	if (counts.every(({ found, wanted }) => found === wanted)) return 'whole';
	return `in part: ${JSON.stringify(counts)}`;
}

/** What is stored is on record under its own name, and nothing else is. */
async function onRecord({ db }: Context, job: number): Promise<number> {
	const { rows } = await sql<{ n: number }>`SELECT count(*) AS n FROM history
		WHERE who = ${nameOf(job)}`.execute(db);
	return rows[0]?.n ?? -1;
}

/** A file is one change; readings and holes are on record row by row. */
function rowsOnRecord(job: number): number {
	return job % 3 === 2 ? READINGS_OF_ONE * (1 + HOLES_OF_ONE) : 1;
}

async function readings({ db }: Context, job: number) {
	const { rows } = await sql<{ readings: number; holes: number }>`
		SELECT count(DISTINCT reading.id) AS readings, count(hole.position) AS holes
		FROM reading LEFT JOIN hole ON hole.reading_id = reading.id
		WHERE remark = ${String(job)}`.execute(db);
	return [
		{ found: rows[0]?.readings ?? 0, wanted: READINGS_OF_ONE },
		{ found: rows[0]?.holes ?? 0, wanted: READINGS_OF_ONE * HOLES_OF_ONE }
	];
}

async function weather({ db }: Context, job: number) {
	const first = firstDayOf(job);
	const last = addDays(first, DAYS_OF_ONE - 1);
	const from_s = Date.parse(first) / 1000;
	const to_s = Date.parse(addDays(last, 1)) / 1000;
	const { rows } = await sql<{ days: number; hours: number }>`SELECT
		(SELECT count(*) FROM weather_day WHERE day BETWEEN ${first} AND ${last}
			AND air_degC IS NOT NULL) AS days,
		(SELECT count(*) FROM weather_hour WHERE at_s >= ${from_s} AND at_s < ${to_s}) AS hours
	`.execute(db);
	const isHourly = job % 3 === 1;
	return [
		{ found: rows[0]?.days ?? 0, wanted: isHourly ? HOURLY_DAYS_OF_ONE : DAYS_OF_ONE },
		...(isHourly ? [{ found: rows[0]?.hours ?? 0, wanted: HOURLY_DAYS_OF_ONE * 24 }] : [])
	];
}
