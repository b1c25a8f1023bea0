import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { estimate } from '#lib/model/ensemble/estimate.ts';
import {
	ensembleText,
	figuresOf,
	largestApart,
	readEnsemble
} from '../../../src/commands/bench/c-ensemble.ts';
import { withCProgram } from '../../../src/commands/bench/c-program.ts';
import { inventedEnsemble } from '../../../src/commands/bench/invented-ensemble.ts';

test('the invented ensemble has ten readings, none of which is asked about, and ice that goes', () => {
	const { days, iceOut } = estimate(inventedEnsemble(60, 200));
	const readings = days.flatMap(({ recalibrations }) => recalibrations);
	expect(readings).toHaveLength(10);
	expect(readings.filter(({ off, isAskedAbout }) => off === null || isAskedAbout)).toEqual([]);
	expect(iceOut?.neverFraction).toBe(0);
});

test('one figure that differs is found, and so is a day too many', () => {
	expect(largestApart([[0.2, 0.1], [0.3]], [[0.2, 0.1], [0.3]])).toBe(0);
	expect(largestApart([[0.2, 0.1], [0.3]], [[0.2, 0.104], [0.3]])).toBeCloseTo(0.004);
	expect(largestApart([[0.2, 0.1]], [[0.2, NaN]])).toBeNaN();
	expect(largestApart([[0.2, 0.1]], [[0.2]])).toBe(Infinity);
});

describe.runIf(spawnSync('cc', ['--version']).status === 0)('where there is a C compiler', () => {
	test('the ensemble in C tells the same of every day, within rounding', () => {
		const input = inventedEnsemble(150, 200);
		const c = withCProgram('time-ensemble.c', (program) => ({
			status: 'ran' as const,
			...readEnsemble(program(ensembleText(input, 2)))
		}));
		if (c.status !== 'ran') throw new Error(JSON.stringify(c));
		expect(c.times_ms).toHaveLength(2);
		expect(largestApart(estimate(input).days.map(figuresOf), c.days)).toBeLessThan(1e-7);
	});
});
