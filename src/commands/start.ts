import type { AddressInfo } from 'node:net';
import { ensureBuilt } from './start/build.ts';
import { serve } from './start/server.ts';
import { readSettings } from './start/settings.ts';

/** How long open requests may take to finish once a stop is asked for. */
const GRACE_MS = 5_000;

async function start(): Promise<void> {
	const settings = readSettings(process.env);
	await ensureBuilt();
	const server = await serve(settings);
	const name = settings.host === '127.0.0.1' ? 'localhost' : settings.host;
	// The port that was bound: with PORT=0 the system chooses a free one.
	const { port } = server.address() as AddressInfo;
	process.stdout.write(`Frostledger is at http://${name}:${port} (stop it with Ctrl+C)\n`);
	for (const signal of ['SIGINT', 'SIGTERM'] as const) {
		process.once(signal, () => {
			server.close(() => {
				process.emit('sveltekit:shutdown' as 'exit', 0);
				process.exit(0);
			});
			server.closeIdleConnections();
			setTimeout(() => server.closeAllConnections(), GRACE_MS).unref();
		});
	}
}

start().catch((cause: unknown) => {
	process.stderr.write(`Frostledger did not start: ${String((cause as Error).message ?? cause)}\n`);
	process.exitCode = 1;
});
