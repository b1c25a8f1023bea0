import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { baselinePredictions } from '../../src/commands/validate/baseline-spread.ts';
import { baselinesFor } from '../../src/commands/validate/baselines.ts';
import { groupScores } from '../../src/commands/validate/groups.ts';
import { selectScored } from '../../src/commands/validate/selection.ts';
import { readTidyFolder } from '../../src/commands/validate/tidy-folder.ts';
import { inventedFolder } from './validate/tidy-winters.ts';

const number = z.number().nullable();
const share = z.number().min(0).max(1).nullable();

const score = z.strictObject({
	n: z.int(),
	unanswered: z.int(),
	rmse_cm: number,
	bias_cm: number,
	crps_cm: number,
	coverage90: share,
	belowLower: share,
	white_n: z.int(),
	white_rmse_cm: number,
	white_bias_cm: number,
	whiteSpread_cm: number,
	snow_n: z.int(),
	snow_rmse_cm: number
});
const phases = {
	growth: score.extend({
		thirds: z.array(score.extend({ from_cm: z.number(), to_cm: z.number() })).max(3)
	}),
	early: score,
	decay: score,
	both: score
};
const iceOut = z.strictObject({
	n: z.int(),
	mae_d: number,
	bias_d: number,
	coverage80: share,
	neverReached: z.int()
});
const withAll = <T extends z.ZodType>(group: T) => z.object({ all: group }).catchall(group);
const mode = withAll(
	z.strictObject({ ...phases, iceOut: iceOut.extend({ after14: iceOut, after30: iceOut }) })
);
const baseline = withAll(z.strictObject(phases));

const report = z.strictObject({
	parameters: z.enum(['shipped', 'refitted']),
	notes: z.array(z.string()),
	winters: z.int(),
	leftOut: z.record(z.string(), z.int()),
	modes: z.strictObject({ prior: mode, learned: mode, recalibrated: mode }),
	baselines: z.strictObject({
		alpha24: baseline,
		alpha17: baseline,
		alphaOtherLakes: baseline,
		alphaOwn: baseline,
		fromLastReading: baseline,
		fromLastReadingFrostOnly: baseline,
		lastReading: baseline
	})
});

function validate(args: string[], calledFrom = process.cwd()) {
	const { stdout, stderr, status } = spawnSync(
		process.execPath,
		['--import', 'tsx', 'src/commands/validate.ts', ...args],
		{ encoding: 'utf8', env: { ...process.env, INIT_CWD: calledFrom } }
	);
	return { stdout, stderr, status };
}

function invented(): string {
	const readings = [
		{ on: '2002-01-10', total_cm: 30, clear_cm: 25, white_cm: 5, snow_cm: 4 },
		{ on: '2002-02-10', total_cm: 41 },
		{ on: '2002-03-30', total_cm: 35 }
	];
	const lake = { freezeUpOn: '2001-12-01', iceOutOn: '2002-05-01', readings };
	const lakes = [
		{ ...lake, code: 'A' },
		{ ...lake, code: 'B' }
	];
	return inventedFolder({ lakes, air_degC: (on) => (on < '2002-03-15' ? -8 : 7) });
}

test('with --json one object of the agreed form is printed, and nothing else', () => {
	const { stdout, stderr, status } = validate([invented(), '--json']);
	expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
	const { modes, baselines, winters } = report.parse(JSON.parse(stdout));
	expect(winters).toBe(2);
	expect(Object.keys(modes.prior)).toEqual(['all', 'invented']);
	expect(modes.prior.all).toMatchObject({ growth: { n: 4, white_n: 2 }, decay: { n: 2 } });
	expect(modes.recalibrated.all).toMatchObject({ growth: { n: 2 }, decay: { n: 2 } });
	expect(modes.learned, 'a lake of one winter has no other').toEqual(modes.prior);
	expect(modes.prior.all.growth.crps_cm).toBeGreaterThan(0);
	expect(modes.prior.all.iceOut.coverage80).not.toBeNull();
	expect(modes.prior.all.iceOut.n).toBe(2);
	expect(baselines.alphaOtherLakes.all.growth.n).toBe(4);
	expect(baselines.alphaOwn.all.growth.n).toBe(0);
});

test('without it a table is printed that names its parameters', () => {
	const { stdout, status } = validate([invented()]);
	expect(status).toBe(0);
	expect(stdout).toContain('use the parameters as shipped');
	expect(stdout).toMatch(/prior invented growth +4 /);
	expect(stdout).toMatch(/alpha24 all decay +2 /);
});

test('--report writes a page of pictures beside what is printed', () => {
	const folder = invented();
	const called = dirname(folder);
	const { stdout, stderr, status } = validate(
		[basename(folder), '--json', '--report', join(basename(folder), 'page.html')],
		called
	);
	expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
	const { modes } = report.parse(JSON.parse(stdout));
	const page = readFileSync(join(folder, 'page.html'), 'utf8');
	expect(page).toContain(`folder “${basename(folder)}”`);
	expect(page).not.toContain(called);
	expect(page).toContain(
		`<th scope="row">prior</th><td>4</td><td>${modes.prior.all.growth.rmse_cm?.toFixed(1)}</td>`
	);
});

test.each([
	['nowhere/page.html', 'ENOENT'],
	['.', 'it is a folder']
])('a report that cannot be written to %s is refused before anything is scored', (file, why) => {
	const { stdout, stderr, status } = validate([invented(), '--report', file]);
	expect({ stdout, status }).toEqual({ stdout: '', status: 2 });
	expect(stderr).toContain('the report cannot be written to');
	expect(stderr).toContain(why);
});

test('the folder is meant from where the command was called', () => {
	const folder = invented();
	expect(validate([basename(folder), '--json'], dirname(folder)).status).toBe(0);
});

test.each([
	[[], 'name one folder'],
	[['a', 'b'], 'name one folder'],
	[['nowhere'], 'there is no folder'],
	[['package.json'], 'is not a folder'],
	[['src'], 'src/lakes.csv is missing'],
	[['src', '--jsno'], '--jsno']
])('with %j it says what is wrong in one line and exits with 2', (args, message) => {
	const { stdout, stderr, status } = validate(args);
	expect({ stdout, status }).toEqual({ stdout: '', status: 2 });
	expect(stderr).toContain(message);
	expect(stderr.trim().split('\n')).toHaveLength(1);
});

describe.runIf(existsSync('../shared/winters'))(
	'on the measured winters beside the project',
	() => {
		test('the selection is the one the folder describes: 1.7 √FDD scores 7.9 and +0.4 in growth', () => {
			const { winters, leftOut } = selectScored(readTidyFolder('../shared/winters'));
			const law = baselinesFor(winters).find(({ id }) => id === 'alpha17');
			const scores = groupScores(law ? baselinePredictions(law, winters) : []).all;
			expect(scores?.growth).toMatchObject({ n: 516, unanswered: 0 });
			expect(scores?.growth.rmse_cm).toBeCloseTo(7.9, 1);
			expect(scores?.growth.bias_cm).toBeCloseTo(0.4, 1);
			expect(scores?.decay.n).toBe(118);
			expect(leftOut.doubtful).toBe(1);
		});
	}
);
