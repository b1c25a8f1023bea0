import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import SqliteFile from 'libsql';
import { build } from 'vite';
import { expect, onTestFinished, test } from 'vitest';
import { closeContext, openContext } from '../../src/lib/server/context.ts';
import { joinChanged } from '../../src/lib/server/services/joining.ts';
import { markAllForJoining } from '../../src/lib/server/storage/joined-days.ts';
import { inventedLake } from '../support/fresh-context.ts';
import { useSource } from '../support/invented-source.ts';
import { refreshedAt } from '../support/refresh-kill-work.ts';

/** Few, as each child takes a second to start; `KILLS=200` makes a night of it. */
const KILLS = Number(process.env['KILLS'] ?? 8);
/** Refreshes that a child gets done, at most, before the one that the kill falls into. */
const MOST_DONE = 2;
const CHILD_FOLDER = join('node_modules', '.cache', 'frostledger-refresh-kill');

test(
	'killed while it refreshes, it keeps what it brought, forecasts whole, and joins what was left',
	async () => {
		const folder = mkdtempSync(join(tmpdir(), 'frostledger-refresh-kill-'));
		onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
		const lakeId = await makeLake(folder);
		const ssr = 'tests/support/refresh-kill-child.ts';
		const options = { ssr, outDir: CHILD_FOLDER, emptyOutDir: true, minify: false };
		await build({ configFile: false, logLevel: 'silent', build: options });
		const found = { interrupted: 0, done: 0, toBeJoined: 0 };
		let next = 0;
		for (let kill = 0; kill < KILLS; kill++) {
			const { done, started } = await runAndKill(folder, next);
			if (!done.includes(started)) found.interrupted++;
			found.done += done.length;
			found.toBeJoined += lookInto(join(folder, 'frostledger.db'), done.at(-1) ?? null);
			next = started + 1;
		}
		expect(found.interrupted, 'kills that hit a refresh').toBeGreaterThan(KILLS / 2);
		expect(found.done, 'refreshes that were done').toBeGreaterThan(0);
		await expectJoined(folder, lakeId);
	},
	60_000 + KILLS * 10_000
);

async function makeLake(folder: string): Promise<string> {
	const ctx = await openContext({ FROSTLEDGER_DATA: folder });
	const { id } = await inventedLake(ctx, { timeZone: 'Etc/UTC' });
	await useSource(ctx, id);
	await closeContext(ctx);
	return id;
}

/** How long a refresh took when it was last seen to its end. */
let took_ms = 300;

async function runAndKill(folder: string, first: number) {
	const child = spawn(
		process.execPath,
		[join(CHILD_FOLDER, 'refresh-kill-child.js'), folder, String(first)],
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
			if (job === fatal) setTimeout(() => child.kill('SIGKILL'), Math.random() * took_ms);
		} else {
			done.push(job);
			if (job > first) took_ms = performance.now() - since_ms;
		}
	}
	if (child.exitCode === null && child.signalCode === null) {
		await new Promise((ended) => child.once('exit', ended));
	}
	expect(child.signalCode).toBe('SIGKILL');
	return { done, started };
}

/** What the kill left; tells whether days were still to be joined. */
function lookInto(path: string, lastDone: number | null): number {
	const file = new SqliteFile(path);
	try {
		const all = (query: string) => file.prepare(query).all() as Record<string, unknown>[];
		expect(all('PRAGMA integrity_check')).toEqual([{ integrity_check: 'ok' }]);
		expect(all('PRAGMA foreign_key_check')).toEqual([]);
		const [hours] = all(
			'SELECT min(at_s) AS first, max(at_s) AS last, count(*) AS n FROM source_hour'
		);
		const { first, last, n } = hours as { first: number; last: number; n: number };
		if (n > 0) expect(n, 'hours without a gap').toBe((last - first) / 3600 + 1);
		const issues = all(
			`SELECT count(day) AS days FROM forecast_issue LEFT JOIN forecast_day ON issue_id = forecast_issue.id
			GROUP BY forecast_issue.id`
		);
		for (const { days } of issues) expect(days, 'days of a forecast').toBe(11);
		if (lastDone !== null) {
			const at = refreshedAt(lastDone);
			expect(last).toBeGreaterThanOrEqual(at.getTime() / 1000 - 3 * 3600);
			const [issue] = all('SELECT max(issued_at) AS at FROM forecast_issue');
			expect(String(issue?.['at']) >= at.toISOString()).toBe(true);
		}
		return all('SELECT 1 FROM rejoin').length;
	} finally {
		file.close();
	}
}

/** What a reader finds is what joining all of it anew finds. */
async function expectJoined(folder: string, lakeId: string): Promise<void> {
	const ctx = await openContext({ FROSTLEDGER_DATA: folder });
	onTestFinished(() => closeContext(ctx));
	const days = () => ctx.db.selectFrom('joined_day').selectAll().orderBy('day').execute();
	await joinChanged(ctx, lakeId);
	const found = await days();
	await markAllForJoining(ctx.db, lakeId);
	await joinChanged(ctx, lakeId);
	expect(found.length).toBeGreaterThan(0);
	expect(found).toEqual(await days());
}
