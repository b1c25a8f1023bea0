import { spawn, type ChildProcess } from 'node:child_process';

/** One of several processes on the same database. */
export interface TwinApp {
	url: string;
	/** Works that this process does for all of them. */
	does: Set<string>;
	/** Ends it at once, as a power cut would. */
	kill(): Promise<void>;
	stop(): Promise<void>;
}

/** Starts the app as `npm start` runs it, in one process, so that a kill leaves nothing of it. */
export async function startTwin(environment: Record<string, string>): Promise<TwinApp> {
	const child = spawn(process.execPath, ['--import', 'tsx', 'src/commands/start.ts'], {
		env: {
			...process.env,
			NODE_ENV: 'production',
			VITEST: undefined,
			PORT: '0',
			FROSTLEDGER_LOG: 'json',
			...environment
		}
	});
	const does = new Set<string>();
	const url = await new Promise<string>((found, fail) => {
		let errors = '';
		let rest = '';
		child.stderr.on('data', (chunk: Buffer) => (errors += chunk.toString()));
		child.once('exit', (code) => fail(new Error(`stopped with code ${code}: ${errors}`)));
		child.stdout.on('data', (chunk: Buffer) => {
			const lines = (rest + chunk.toString()).split('\n');
			rest = lines.pop() ?? '';
			for (const line of lines) {
				const event = JSON.parse(line) as Record<string, string>;
				if (event['event'] === 'start') found(event['url'] ?? '');
				if (event['event'] !== 'lease') continue;
				if (event['isHeld']) does.add(event['work'] ?? '');
				else does.delete(event['work'] ?? '');
			}
		});
	});
	return {
		url,
		does,
		kill: () => end(child, 'SIGKILL'),
		stop: () => end(child, 'SIGTERM')
	};
}

function end(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
	if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve();
	child.kill(signal);
	return new Promise((done) => child.once('exit', () => done()));
}

/** Asks an app's API. @throws Error where it refuses */
export async function askTwin<Answer>(
	{ url }: TwinApp,
	method: string,
	path: string,
	body?: unknown
): Promise<Answer> {
	const isText = typeof body === 'string';
	const response = await fetch(new URL(`/api/v1${path}`, url), {
		method,
		...(body === undefined ? {} : { body: isText ? body : JSON.stringify(body) }),
		headers: { 'content-type': isText ? 'text/csv' : 'application/json' }
	});
	if (!response.ok) throw new Error(`${method} ${path}: ${await response.text()}`);
	return (await response.json()) as Answer;
}
