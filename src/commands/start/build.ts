import { spawn } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';

const BUILT = 'build/handler.js';
const SOURCES = [
	'src',
	'static',
	'data/charts',
	'package-lock.json',
	'svelte.config.js',
	'vite.config.ts'
];

/**
 * Builds the app unless what is built is newer than every source.
 * @throws Error when the build fails; its own output has been shown by then.
 */
export async function ensureBuilt({ quiet = false } = {}): Promise<void> {
	if (isFresh()) return;
	if (!quiet) process.stdout.write('Building the app, once (about half a minute) ...\n');
	await run(viteCli(), ['build']);
}

function isFresh(): boolean {
	if (!existsSync(BUILT)) return false;
	const builtAt_ms = statSync(BUILT).mtimeMs;
	return SOURCES.every((path) => newest_ms(path) < builtAt_ms);
}

/** Time of the last change at or below a path; 0 where there is nothing. */
function newest_ms(path: string): number {
	if (!existsSync(path)) return 0;
	const stat = statSync(path);
	if (!stat.isDirectory()) return stat.mtimeMs;
	return readdirSync(path).reduce(
		(latest_ms, name) => Math.max(latest_ms, newest_ms(join(path, name))),
		stat.mtimeMs
	);
}

function viteCli(): string {
	const manifest = createRequire(resolve('package.json')).resolve('vite/package.json');
	return join(dirname(manifest), 'bin/vite.js');
}

function run(script: string, words: string[]): Promise<void> {
	return new Promise((done, fail) => {
		// A test runner's mode must not leak into the build.
		const environment = { ...process.env, NODE_ENV: 'production', VITEST: undefined };
		const child = spawn(process.execPath, [script, ...words], { env: environment });
		let output = '';
		for (const stream of [child.stdout, child.stderr]) {
			stream.on('data', (chunk: Buffer) => (output += chunk.toString()));
		}
		child.on('error', fail);
		child.on('exit', (code) => {
			if (code === 0) return done();
			process.stderr.write(output);
			fail(new Error(`the build failed with code ${code}; its output is above`));
		});
	});
}
