import { spawnSync } from 'node:child_process';
import { beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { asText } from '../../src/commands/bench/report-text.ts';

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

const pages = z.strictObject({
	requests: z.int().min(1),
	median_ms: positive,
	p95_ms: positive,
	slowest_ms: positive
});

const rate = z.strictObject({
	requests: z.int().min(1),
	perSecond: positive,
	median_ms: positive
});

const report = z.strictObject({
	node: z.string(),
	season: z.strictObject({ days: z.literal(200), median_ms: positive, c }),
	ensemble: z.strictObject({
		...size,
		compared: z.string(),
		c,
		sizes: z.array(z.strictObject(size)).length(4)
	}),
	storing: z.strictObject({
		rows: z.literal(5088),
		rows_per_s: positive,
		fastest_rows_per_s: positive
	}),
	keepingUp: z.strictObject({
		lakes: z.literal(2),
		limits: z.strictObject({ perDay: z.literal(3), perMinute: positive }),
		calls: z.int().min(1).max(3),
		mostCallsInAMinute: positive,
		duration_s: z.number().nonnegative(),
		idle: pages,
		meanwhile: pages
	}),
	serving: z.strictObject({
		lakes: z.literal(2),
		trivial: rate,
		lake: rate,
		lakeAnew: rate,
		ratio: positive,
		home: z.strictObject({
			first_ms: positive,
			allTold_ms: positive,
			again_ms: positive,
			otherMeanwhile_p95_ms: positive
		})
	}),
	warnings: z.array(z.string())
});

/** One run for all tests: it starts the app and waits for it. */
function bench(): unknown {
	const { stdout, stderr, status } = spawnSync(
		process.execPath,
		['--import', 'tsx', 'src/commands/bench.ts', '--quick', '--json'],
		{ encoding: 'utf8' }
	);
	expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
	return JSON.parse(stdout);
}

let told: z.infer<typeof report>;

beforeAll(() => {
	told = report.parse(bench());
}, 240_000);

test('with --json one object is printed; without a ratio it says why', () => {
	const { season, ensemble, warnings } = told;
	const ratios = [season.c.ratio, ensemble.c.ratio];
	expect(ratios.filter((ratio) => ratio === null)).toHaveLength(warnings.length);
	expect(ensemble).toMatchObject({ members: 100, days: 100, readings: 6 });
});

test('as text it says what was timed, what was compared, and the times of four sizes', () => {
	const text = asText(told);
	expect(text).toContain('100 members × 100 days, 6 readings, the quantiles of each day included');
	expect(text).toContain('compared: draws, days, readings');
	expect(text.match(/µs each/g)).toHaveLength(4);
});

test('a source is called no more often than it allows, and pages are timed meanwhile', () => {
	expect(told.keepingUp.calls).toBeLessThanOrEqual(told.keepingUp.limits.perDay);
	const text = asText(told);
	expect(text).toMatch(/2 lakes on one source, 3 calls a day .* allowed: [123] calls in/);
	expect(text).toMatch(/pages meanwhile: \d+, median/);
});

test('pages are told by their rate, beside a page without data', () => {
	const { serving } = told;
	expect(serving.ratio).toBeCloseTo(serving.lake.perSecond / serving.trivial.perSecond, 9);
	expect(serving.home.allTold_ms).toBeGreaterThanOrEqual(serving.home.first_ms);
	expect(asText(told)).toMatch(/pages with 2 lakes stored, .*: a form \d+ a second/);
});
