/** What a piece of work took, by the clock and of this process's cores. */
export interface Spent {
	duration_ms: number;
	cpu_ms: number;
}

export async function timed(work: () => Promise<unknown>): Promise<Spent> {
	const [start_ms, before] = [performance.now(), process.cpuUsage()];
	await work();
	const { user, system } = process.cpuUsage(before);
	return { duration_ms: performance.now() - start_ms, cpu_ms: (user + system) / 1000 };
}
