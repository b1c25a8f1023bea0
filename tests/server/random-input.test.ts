import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { build } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';

/** Few, so that they pass in a minute; `INPUTS=100000` sends so many of each kind, which takes hours. */
const INPUTS = Number(process.env['INPUTS'] ?? 250);
const SEED = Number(process.env['SEED'] ?? 20_270_110);
const MOST_MB = 512;
/** On a large machine Node would rather let garbage grow than collect it. */
const HEAP_MB = 256;
const LONGEST_MS = 60_000 + INPUTS * 100;

let folder = '';

beforeAll(async () => {
	folder = mkdtempSync(join('.svelte-kit', 'random-input-'));
	const options = { ssr: 'tests/support/fuzz-child.ts', outDir: folder, minify: false };
	await build({
		configFile: false,
		logLevel: 'silent',
		// Pages share modules with runes in them.
		plugins: [svelte({ configFile: false })],
		build: { ...options, emptyOutDir: true }
	});
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Report {
	count: number;
	faults: string[];
	statuses: Record<string, number>;
	longestTry_ms: number;
	longestTurn_ms: number;
	rss_MB: number;
}

/** Runs a child of its own, with its own memory; one that hangs is killed and named. */
function send(kind: string): Promise<Report> {
	const script = join(folder, 'fuzz-child.js');
	const child = spawn(process.execPath, [
		`--max-old-space-size=${HEAP_MB}`,
		script,
		kind,
		String(INPUTS),
		String(SEED)
	]);
	let said = '';
	let errors = '';
	child.stdout.on('data', (chunk: Buffer) => (said += chunk.toString()));
	child.stderr.on('data', (chunk: Buffer) => (errors += chunk.toString()));
	const timer = setTimeout(() => child.kill('SIGKILL'), LONGEST_MS);
	return new Promise((done, fail) => {
		child.once('close', (code) => {
			clearTimeout(timer);
			const lines = said.trim().split('\n');
			if (code === 0) done(JSON.parse(lines.at(-1) ?? '') as Report);
			else
				fail(
					new Error(
						`ended with ${code ?? 'a kill'} after “${lines.at(-1)}”: ${errors.slice(-3000)}`
					)
				);
		});
	});
}

test.each(['csv', 'table', 'gpx', 'body', 'query', 'form', 'source'])(
	'random input of the kind “%s” breaks nothing, hangs nothing and fills no memory',
	async (kind) => {
		const { count, faults, statuses, rss_MB } = await send(kind);
		expect(faults.join('\n\n')).toBe('');
		expect(count).toBe(INPUTS);
		// Some of it is taken and some refused, or it would prove little.
		expect(Object.keys(statuses).length).toBeGreaterThan(kind === 'source' ? 0 : 1);
		expect(rss_MB).toBeLessThan(MOST_MB);
	},
	LONGEST_MS + 10_000
);
