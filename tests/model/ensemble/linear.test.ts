import { expect, test } from 'vitest';
import { solve, triangularRoot } from '#lib/model/ensemble/linear.ts';

const MATRIX = [
	[4, 2, 2],
	[2, 5, 3],
	[2, 3, 6]
];

test('the root times its transpose is the matrix', () => {
	const root = triangularRoot(MATRIX);
	const at = (i: number, j: number) =>
		(root[i] ?? []).reduce((sum, value, k) => sum + value * (root[j]?.[k] ?? 0), 0);
	MATRIX.forEach((row, i) => row.forEach((value, j) => expect(at(i, j)).toBeCloseTo(value, 12)));
});

test('solving gives back what the matrix was applied to', () => {
	const wanted = [1, -2, 3];
	const right = MATRIX.map((row) =>
		row.reduce((sum, value, i) => sum + value * (wanted[i] ?? 0), 0)
	);
	solve(triangularRoot(MATRIX), right).forEach((value, i) =>
		expect(value).toBeCloseTo(wanted[i] ?? NaN, 12)
	);
});

test('a matrix that is not quite positive still gives numbers', () => {
	const root = triangularRoot([
		[1, 1],
		[1, 1 - 1e-15]
	]);
	expect(root.flat().every(Number.isFinite)).toBe(true);
	expect(solve(root, [1, 1]).every(Number.isFinite)).toBe(true);
});
