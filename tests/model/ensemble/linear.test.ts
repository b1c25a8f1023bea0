import fc from 'fast-check';
import { expect, test } from 'vitest';
import { solve, triangularRoot } from '#lib/model/ensemble/linear.ts';

type Matrix = readonly (readonly number[])[];

const at = (matrix: Matrix, i: number, j: number): number => matrix[i]?.[j] ?? 0;

function product(a: Matrix, b: Matrix): number[][] {
	return a.map((_, i) =>
		a.map((_, j) => a.reduce((sum, _, k) => sum + at(a, i, k) * at(b, k, j), 0))
	);
}

const transposed = (matrix: Matrix): number[][] =>
	matrix.map((_, i) => matrix.map((_, j) => at(matrix, j, i)));

test('the triangular root of hand-made matrices', () => {
	expect(triangularRoot([[9]])).toEqual([[3]]);
	expect(
		triangularRoot([
			[4, 2],
			[2, 5]
		])
	).toEqual([[2], [1, 2]]);
	// (2 0 0; 1 3 0; -4 2 1) times its transpose
	expect(
		triangularRoot([
			[4, 2, -8],
			[2, 10, 2],
			[-8, 2, 21]
		])
	).toEqual([[2], [1, 3], [-4, 2, 1]]);
});

test('a system solved by hand', () => {
	// 4x + 2y = 10, 2x + 5y = 17
	expect(solve([[2], [1, 2]], [10, 17])).toEqual([1, 3]);
});

test('a matrix a hair short of positive gets zeros and no NaN', () => {
	const root = triangularRoot([
		[1, 1],
		[1, 1 - 1e-15]
	]);
	expect(root).toEqual([[1], [1, 0]]);
	expect(solve(root, [2, 2])).toEqual([2, 0]);
});

test('root times its transpose is the matrix, and the matrix times a solution the right side', () => {
	const number = fc.double({ min: -3, max: 3, noNaN: true });
	const row = fc.array(number, { minLength: 5, maxLength: 5 });
	fc.assert(
		fc.property(fc.array(row, { minLength: 5, maxLength: 5 }), row, (half, right) => {
			const positive = product(half, transposed(half)).map((line, i) =>
				line.map((value, j) => value + (i === j ? 1 : 0))
			);
			const root = triangularRoot(positive);
			const again = product(root, transposed(root));
			again.forEach((line, i) =>
				line.forEach((value, j) => expect(value).toBeCloseTo(at(positive, i, j), 9))
			);
			const solution = solve(root, right);
			positive.forEach((line, i) =>
				expect(line.reduce((sum, value, j) => sum + value * (solution[j] ?? 0), 0)).toBeCloseTo(
					right[i] ?? NaN,
					8
				)
			);
		}),
		{ numRuns: 100, seed: 3 }
	);
});
