import { spawnSync } from 'node:child_process';
import { beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { partsOf } from '../../src/commands/bench/parts.ts';
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

const visit = z.strictObject({
	firstPaint_ms: positive,
	chart_ms: positive,
	allCharts_ms: positive,
	requests: z.int().min(5),
	received_bytes: z.number().min(100_000)
});

const spent = { duration_ms: positive, cpu_ms: positive };

const tally = z.strictObject({
	requests: z.int().min(1),
	errors: z.literal(0),
	firstError: z.null(),
	median_ms: positive,
	p95_ms: positive,
	slowest_ms: positive
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
	phone: z
		.strictObject({
			phone: z.strictObject({ cpuTimes: positive, down_Mbit_s: positive, latency_ms: positive }),
			hours: z.literal(8760),
			visits: z.literal(1),
			median: visit,
			slowest: visit,
			firstAnswer_ms: positive
		})
		.nullable(),
	lakeCost: z.strictObject({
		lakes: z.literal(2),
		hours: z.literal(17_520),
		readings: z.literal(30),
		size_B: z.number().min(100_000),
		refresh: z.strictObject({ ...spent, calls: z.literal(4) }),
		forecast: z.strictObject(spent)
	}),
	load: z.strictObject({
		duration_s: z.literal(3),
		lakes: positive,
		phones: z.literal(50),
		writers: z.literal(5),
		importers: z.literal(1),
		pages: tally,
		readings: tally,
		imports: tally,
		importedRows: z.int().min(8760),
		lost: z.literal(0)
	}),
	warnings: z.array(z.string())
});

/** Runs the command with a few of everything. */
function bench(...words: string[]): unknown {
	const { stdout, stderr, status } = spawnSync(
		process.execPath,
		['--import', 'tsx', 'src/commands/bench.ts', '--quick', '--json', ...words],
		{ encoding: 'utf8' }
	);
	expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
	return JSON.parse(stdout);
}

let told: z.infer<typeof report>;

// One run for most tests: it starts the app and waits for it.
beforeAll(() => {
	told = report.parse(bench());
}, 300_000);

test('with --json one object is printed; without a ratio it says why', () => {
	const { season, ensemble, warnings } = told;
	const ratios = [season.c.ratio, ensemble.c.ratio];
	const ofC = warnings.filter((warning) => !warning.startsWith('no browser'));
	expect(ratios.filter((ratio) => ratio === null)).toHaveLength(ofC.length);
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

test('a phone sees words before charts, or it is said that there was no browser', () => {
	const { phone, warnings } = told;
	const isSaid = warnings.some((warning) => warning.startsWith('no browser'));
	expect(isSaid).toBe(phone === null);
	if (phone === null) return;
	expect(phone.median.firstPaint_ms).toBeLessThan(phone.median.chart_ms);
	expect(phone.median.chart_ms).toBeLessThanOrEqual(phone.median.allCharts_ms);
	expect(asText(told)).toMatch(/8760 hours of weather, .* medians of 1: first words \d+\.\d\d s/);
});

test('what a lake costs, and how it goes under load, is told in figures', () => {
	const text = asText(told);
	expect(text).toMatch(
		/17520 hours of weather from two sources and 30 readings, of 2: \d+\.\d\d MB/
	);
	expect(text).toMatch(/50 phones, 5 people who log readings and 1 who imports.*: 0 readings lost/);
});

test('one part is timed by itself, and no other', () => {
	const only = z.looseObject({ storing: z.looseObject({ rows: z.literal(5088) }) });
	const alone = only.parse(bench('--only', 'storing'));
	for (const part of ['season', 'ensemble', 'keepingUp', 'serving', 'phone', 'lakeCost', 'load'])
		expect(alone[part], part).toBeNull();
	expect(partsOf('phone, model')).toEqual(new Set(['model', 'phone']));
	expect(() => partsOf('phone,tablet')).toThrow(
		/does not know "tablet".*serving, phone, lakeCost, load/
	);
});
