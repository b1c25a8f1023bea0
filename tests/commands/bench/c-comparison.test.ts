import { expect, test } from 'vitest';
import { compareWithC } from '../../../src/commands/bench/c-comparison.ts';

test('a ratio is given where both say the same', () => {
	const ran = { status: 'ran' as const, median_ms: 50, largestDifference_m: 1e-9 };
	const { c, warnings } = compareWithC('x.c', 100, ran, 1e-6);
	expect(c).toEqual({ status: 'ran', median_ms: 50, ratio: 2, largestDifference_m: 1e-9 });
	expect(warnings).toEqual([]);
});

test.each([
	['there is no cc here', { status: 'noCompiler' as const }],
	['x.c could not be compiled or run: oh', { status: 'failed' as const, message: 'oh' }],
	[
		'differ by up to 3.00 mm',
		{ status: 'ran' as const, median_ms: 50, largestDifference_m: 0.003 }
	],
	['differ by up to NaN mm', { status: 'ran' as const, median_ms: 50, largestDifference_m: NaN }]
])('no ratio, but a warning: %s', (warning, run) => {
	const { c, warnings } = compareWithC('x.c', 100, run, 1e-6);
	expect(c.ratio).toBeNull();
	expect(warnings).toEqual([expect.stringContaining(warning)]);
});
