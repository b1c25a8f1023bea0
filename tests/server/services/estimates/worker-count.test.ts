import { expect, test } from 'vitest';
import { thisMachine, workerCount } from '#lib/server/services/estimates/worker-count.ts';

const GB = 1e9;

test.each([
	['one core', { cores: 1, memory_B: 8 * GB }, 1],
	['two cores', { cores: 2, memory_B: 8 * GB }, 1],
	['eight cores', { cores: 8, memory_B: 32 * GB }, 7],
	['eight cores with little memory', { cores: 8, memory_B: 2 * GB }, 2],
	['eight cores with hardly any', { cores: 8, memory_B: GB / 4 }, 1]
])('%s', (_, machine, workers) => {
	expect(workerCount(machine)).toBe(workers);
});

test('this machine has a core and memory', () => {
	const { cores, memory_B } = thisMachine();
	expect(cores).toBeGreaterThan(0);
	expect(memory_B).toBeGreaterThan(1e8);
	expect(memory_B).toBeLessThan(1e14);
});
