import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { total_m } from '#lib/model/column.ts';
import { runSeason } from '#lib/model/season.ts';
import { runCSeason } from '../../../src/commands/bench/c-season.ts';
import { inventedWinter } from '../../../src/commands/bench/invented-winter.ts';
import { largestDifference } from '../../../src/commands/bench/season-report.ts';

test('the invented winter is always the same, freezes, floods and thaws', () => {
	expect(inventedWinter()).toEqual(inventedWinter());
	const columns = runSeason(inventedWinter()).map((day) => day.column);
	expect(columns).toHaveLength(201);
	expect(Math.max(...columns.map(total_m))).toBeGreaterThan(0.2);
	expect(Math.max(...columns.map(({ white_m }) => white_m))).toBeGreaterThan(0.03);
	expect(columns.at(-1)?.clear_m).toBe(0);
});

test('two layers that differ are found, and so is a day too many', () => {
	const column = {
		clear_m: 0.2,
		white_m: 0.05,
		slush_m: 0,
		snow_m: 0.1,
		snowDensity_kg_m3: 250,
		liquidFraction: 0
	};
	expect(largestDifference([column], [[0.2, 0.05, 0, 0.1, 0]])).toBe(0);
	expect(largestDifference([column], [[0.2, 0.053, 0, 0.1, 0]])).toBeCloseTo(0.003);
	expect(largestDifference([column], [])).toBe(Infinity);
});

describe.runIf(spawnSync('cc', ['--version']).status === 0)('where there is a C compiler', () => {
	test('the equations in C give the same winter, to a tenth of a millimetre', () => {
		const winter = inventedWinter();
		const c = runCSeason(winter);
		expect(c.status).toBe('ran');
		const columns = runSeason(winter).map((day) => day.column);
		expect(largestDifference(columns, c.status === 'ran' ? c.states : [])).toBeLessThan(1e-4);
	});
});
