import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

export interface RunningApp {
	url: string;
	/** Asks it to end as a service manager does, and tells its exit code; `null` when it was killed. */
	stop(): Promise<number | null>;
}

/** The app as `npm start` runs it, on a free port, with a data folder of its own; built in `folder`. */
export async function startApp(
	environment: Record<string, string> = {},
	folder = '.'
): Promise<RunningApp> {
	const data = mkdtempSync(join(tmpdir(), 'frostledger-app-'));
	const child = spawn(
		process.execPath,
		[resolve('node_modules/tsx/dist/cli.mjs'), resolve('src/commands/start.ts')],
		{
			cwd: folder,
			env: {
				...process.env,
				NODE_ENV: 'production',
				VITEST: undefined,
				PORT: '0',
				FROSTLEDGER_DATA: data,
				...environment
			}
		}
	);
	const clear = () => rmSync(data, { recursive: true, force: true });
	const url = await address(child).catch((cause: unknown) => {
		clear();
		throw cause;
	});
	return {
		url,
		async stop() {
			child.kill('SIGTERM');
			const code = await new Promise<number | null>((done) => child.once('exit', done));
			clear();
			return code;
		}
	};
}

function address(child: ChildProcess): Promise<string> {
	return new Promise((done, fail) => {
		let output = '';
		const read = (chunk: Buffer) => {
			output += chunk.toString();
			const found = /http:\/\/\S+/.exec(output);
			if (found) done(found[0]);
		};
		child.stdout?.on('data', read);
		child.stderr?.on('data', read);
		child.once('exit', (code) => fail(new Error(`the app stopped with code ${code}: ${output}`)));
	});
}
