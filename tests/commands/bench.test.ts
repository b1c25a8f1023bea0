import { spawnSync } from 'node:child_process';
import { expect, test } from 'vitest';
import { z } from 'zod';

const positive = z.number().positive();

const report = z.strictObject({
	node: z.string(),
	season: z.strictObject({
		days: z.literal(200),
		median_ms: positive,
		c: z.strictObject({
			status: z.enum(['ran', 'noCompiler', 'failed', 'disagrees']),
			median_ms: positive.nullable(),
			ratio: positive.nullable(),
			largestDifference_m: z.number().nullable()
		})
	}),
	warnings: z.array(z.string())
});

test('with --json one object is printed; without a ratio it says why', () => {
	const { stdout, stderr, status } = spawnSync(
		process.execPath,
		['--import', 'tsx', 'src/commands/bench.ts', '--json'],
		{ encoding: 'utf8' }
	);
	expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
	const { season, warnings } = report.parse(JSON.parse(stdout));
	expect(season.c.ratio === null).toBe(warnings.length > 0);
});
