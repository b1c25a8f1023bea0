import { Worker } from 'node:worker_threads';

/** One that needs more than this is ended before the machine swaps; its job is done in slices then. */
const HEAP_MB = 512;

/** Starts threads that run `worker.ts`, as it was built or, without a build, as it is written. */
export async function workerStarter(): Promise<() => Worker> {
	const { ADDRESS, ROLE } = await import('./worker.ts');
	return () =>
		new Worker(ADDRESS.endsWith('.ts') ? asWritten(ADDRESS) : new URL(ADDRESS), {
			name: ROLE,
			workerData: ROLE,
			eval: ADDRESS.endsWith('.ts'),
			execArgv: [],
			resourceLimits: { maxOldGenerationSizeMb: HEAP_MB }
		});
}

/** A thread does not take on how this one reads TypeScript. */
function asWritten(address: string): string {
	return `import('tsx/esm/api').then(({ register }) => {
		register();
		return import(${JSON.stringify(address)});
	});`;
}
