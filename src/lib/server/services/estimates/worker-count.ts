import { availableParallelism, totalmem } from 'node:os';

/** What a worker is reckoned with. */
const WORKER_B = 200e6;
/** Of the memory, for all of them. */
const PART = 0.25;

export interface Machine {
	cores: number;
	memory_B: number;
}

/** As many as cores but one, which answers requests; fewer where memory is short, and one at least. */
export function workerCount({ cores, memory_B }: Machine): number {
	return Math.max(1, Math.min(cores - 1, Math.floor((PART * memory_B) / WORKER_B)));
}

export function thisMachine(): Machine {
	// 0, or more than there is, where nothing confines this process.
	const allowed_B = process.constrainedMemory() || Infinity;
	return { cores: availableParallelism(), memory_B: Math.min(totalmem(), allowed_B) };
}
