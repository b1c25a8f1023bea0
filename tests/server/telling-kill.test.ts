import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import SqliteFile from 'libsql';
import { sql } from 'kysely';
import { build } from 'vite';
import { expect, onTestFinished, test } from 'vitest';
import { closeContext, openContext, type Context } from '../../src/lib/server/context.ts';
import { importWeather } from '../../src/lib/server/services/import-weather.ts';
import { createLake, newLake } from '../../src/lib/server/services/lakes.ts';
import { lookAt } from '../../src/lib/server/services/telling/look.ts';
import { updateTellingOf } from '../../src/lib/server/services/telling/settings.ts';
import type { WebhookBody } from '../../src/lib/server/services/telling/webhook/body.ts';
import { deliverDue } from '../../src/lib/server/services/telling/webhook/deliver.ts';
import { setWebhook, webhookInput } from '../../src/lib/server/services/telling/webhook/webhook.ts';
import { saveSiteWinter, winterInput } from '../../src/lib/server/services/winters.ts';
import { startReceiver, type Receiver } from '../support/webhook-receiver.ts';
import { inPieces, winterCsv } from '../support/winter-csv.ts';

/** `KILLS=50` makes a night of it. */
const KILLS = Number(process.env['KILLS'] ?? 8);
/** Longer than a look takes, so that kills fall before, into and after it. */
const LONGEST_MS = 2500;
const CHILD_FOLDER = join('node_modules', '.cache', 'frostledger-telling-kill');

test(
	'killed again and again, it tells everything that was stored, and nothing as new twice',
	async () => {
		const folder = mkdtempSync(join(tmpdir(), 'frostledger-telling-'));
		onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
		const receiver = await startReceiver();
		onTestFinished(() => receiver.stop());
		const lakeId = await makeLake(folder, receiver);
		await buildChild();
		let jobs = 0;
		for (let kill = 0; kill < KILLS; kill++) {
			jobs = await runAndKill(folder, jobs);
			const file = new SqliteFile(join(folder, 'frostledger.db'));
			expect(file.prepare('PRAGMA integrity_check').all()).toEqual([{ integrity_check: 'ok' }]);
			file.close();
		}
		const ctx = await open(folder);
		onTestFinished(() => closeContext(ctx));
		await lookAt(ctx, lakeId);
		while ((await deliverDue(ctx)) > 0);
		const { rows: integrity } = await sql`PRAGMA integrity_check`.execute(ctx.db);
		expect(integrity).toEqual([{ integrity_check: 'ok' }]);
		const told = await ctx.db.selectFrom('telling_message').selectAll().execute();
		// Each reading once, acknowledged or not; each other news once.
		const places = (await ctx.db.selectFrom('reading').select('place').execute()).map(
			({ place }) => place ?? ''
		);
		expect(places.length).toBeGreaterThanOrEqual(jobs);
		for (const place of places) {
			expect(
				told.filter(({ title }) => title.includes(`at ${place} on`)),
				place
			).toHaveLength(1);
		}
		const others = told.filter(({ kind }) => kind !== 'wentThrough').map(({ title }) => title);
		expect(others.length).toBeGreaterThan(0);
		expect(new Set(others).size).toBe(others.length);
		// Everything arrived, what came twice by one id, and nothing that was not told.
		const ids = receiver.received.map(({ body }) => (JSON.parse(body) as WebhookBody).id);
		expect(new Set(ids)).toEqual(new Set(told.map(({ id }) => id)));
		expect(await ctx.db.selectFrom('webhook_outbox').selectAll().execute()).toEqual([]);
	},
	120_000 + KILLS * 8_000
);

async function open(folder: string): Promise<Context> {
	return openContext({ FROSTLEDGER_DATA: folder, FROSTLEDGER_WEBHOOK_HOSTS: '127.0.0.1' });
}

/** An invented lake that is always on 28 January, with a load that is expected in the days to come. */
async function makeLake(folder: string, receiver: Receiver): Promise<string> {
	const ctx = await open(folder);
	const facts = { name: 'Test Lake', latitude: 47.4, longitude: -38.2, water: 'lake' };
	const lake = newLake.parse({ ...facts, timeZone: 'Etc/UTC' });
	const { id } = await createLake(ctx, lake, { today: '2027-01-28' });
	await importWeather(ctx, id, inPieces(winterCsv('2026-10-01', 120)));
	const record = winterInput.parse({ freezeUpOn: '2026-11-20' });
	await saveSiteWinter(ctx, id, 'main', { winter: '2026-27', ...record });
	await updateTellingOf(ctx, id, { loads: ['heavy-truck', 'on-foot'] });
	const kinds = [
		'wentThrough',
		'thresholdExpected',
		'endExpected',
		'readingOverdue',
		'weatherStale'
	];
	await setWebhook(ctx, id, webhookInput.parse({ address: receiver.at(), kinds }));
	await closeContext(ctx);
	return id;
}

async function buildChild(): Promise<void> {
	const ssr = 'tests/support/telling-kill-child.ts';
	const options = { ssr, outDir: CHILD_FOLDER, emptyOutDir: true, minify: false };
	await build({ configFile: false, logLevel: 'silent', build: options });
}

/** Runs a child from a job on, kills it at a random moment, and tells the job after its last. */
async function runAndKill(folder: string, first: number): Promise<number> {
	const child = spawn(
		process.execPath,
		[join(CHILD_FOLDER, 'telling-kill-child.js'), folder, String(first)],
		{ stdio: ['ignore', 'pipe', 'inherit'] }
	);
	let next = first;
	let timer: NodeJS.Timeout | null = null;
	for await (const line of createInterface({ input: child.stdout })) {
		next = Number(line.split(' ')[1]) + 1;
		timer ??= setTimeout(() => child.kill('SIGKILL'), Math.random() * LONGEST_MS);
	}
	if (child.exitCode === null && child.signalCode === null) {
		await new Promise((done) => child.once('exit', done));
	}
	expect(child.signalCode).toBe('SIGKILL');
	return next;
}
