import { spawnSync } from 'node:child_process';
import { expect, test } from 'vitest';
import { z } from 'zod';

const positive = z.number().positive();

const c = z.strictObject({
	status: z.enum(['ran', 'noCompiler', 'failed', 'disagrees']),
	median_ms: positive.nullable(),
	ratio: positive.nullable(),
	largestDifference_m: z.number().nullable()
});

const size = {
	members: positive,
	days: positive,
	readings: positive,
	median_ms: positive,
	fastest_ms: positive,
	each_us: positive
};

const report = z.strictObject({
	node: z.string(),
	season: z.strictObject({ days: z.literal(200), median_ms: positive, c }),
	ensemble: z.strictObject({
		...size,
		compared: z.string(),
		c,
		sizes: z.array(z.strictObject(size)).length(4)
	}),
	warnings: z.array(z.string())
});

function bench(...args: string[]): string {
	const { stdout, stderr, status } = spawnSync(
		process.execPath,
		['--import', 'tsx', 'src/commands/bench.ts', '--quick', ...args],
		{ encoding: 'utf8' }
	);
	expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
	return stdout;
}

test('with --json one object is printed; without a ratio it says why', () => {
	const { season, ensemble, warnings } = report.parse(JSON.parse(bench('--json')));
	const ratios = [season.c.ratio, ensemble.c.ratio];
	expect(ratios.filter((ratio) => ratio === null)).toHaveLength(warnings.length);
	expect(ensemble).toMatchObject({ members: 100, days: 100, readings: 6 });
});

test('as text it says what was timed, what was compared, and the times of four sizes', () => {
	const text = bench();
	expect(text).toContain('100 members × 100 days, 6 readings, the quantiles of each day included');
	expect(text).toContain('compared: draws, days, readings');
	expect(text.match(/µs each/g)).toHaveLength(4);
});
