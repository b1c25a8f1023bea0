import type { AddressInfo } from 'node:net';
import { isLogOfJson, logEvent } from '#lib/server/services/log.ts';
import { ensureBuilt } from './start/build.ts';
import { serve } from './start/server.ts';
import { readSettings } from './start/settings.ts';
import { stopInOrder } from './start/stop.ts';

async function start(): Promise<void> {
	const settings = readSettings(process.env);
	const isJson = isLogOfJson();
	await ensureBuilt({ quiet: isJson });
	const server = await serve(settings);
	const name = settings.host === '127.0.0.1' ? 'localhost' : settings.host;
	// The port that was bound: with PORT=0 the system chooses a free one.
	const { port } = server.address() as AddressInfo;
	const url = `http://${name}:${port}`;
	if (isJson) logEvent('start', { url });
	else process.stdout.write(`Frostledger is at ${url} (stop it with Ctrl+C)\n`);
	for (const signal of ['SIGINT', 'SIGTERM'] as const) {
		// Asked a second time it ends at once, as it would without this.
		process.once(signal, () => void stopInOrder(server, signal));
	}
}

start().catch((cause: unknown) => {
	process.stderr.write(`Frostledger did not start: ${String((cause as Error).message ?? cause)}\n`);
	process.exitCode = 1;
});
