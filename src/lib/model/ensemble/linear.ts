/**
 * Triangular root C of a symmetric positive matrix A = C Cᵀ (Cholesky), a row an array.
 *
 * A matrix that rounding has left a hair short of positive gets zeros where the root would not be real.
 */
export function triangularRoot(matrix: readonly (readonly number[])[]): number[][] {
	const root: number[][] = [];
	matrix.forEach((row, i) => {
		const own: number[] = [];
		for (let j = 0; j <= i; j++) {
			const other = j === i ? own : (root[j] ?? []);
			let rest = row[j] ?? 0;
			for (let k = 0; k < j; k++) rest -= (own[k] ?? 0) * (other[k] ?? 0);
			const pivot = root[j]?.[j] ?? 0;
			own.push(j === i ? Math.sqrt(Math.max(0, rest)) : pivot > 0 ? rest / pivot : 0);
		}
		root.push(own);
	});
	return root;
}

/** Solves A x = b with the triangular root of A. */
export function solve(root: readonly (readonly number[])[], right: readonly number[]): number[] {
	const forward: number[] = [];
	root.forEach((row, i) => {
		let rest = right[i] ?? 0;
		for (let k = 0; k < i; k++) rest -= (row[k] ?? 0) * (forward[k] ?? 0);
		const pivot = row[i] ?? 0;
		forward.push(pivot > 0 ? rest / pivot : 0);
	});
	const solution = forward.map(() => 0);
	for (let i = root.length - 1; i >= 0; i--) {
		let rest = forward[i] ?? 0;
		for (let k = i + 1; k < root.length; k++) rest -= (root[k]?.[i] ?? 0) * (solution[k] ?? 0);
		const pivot = root[i]?.[i] ?? 0;
		solution[i] = pivot > 0 ? rest / pivot : 0;
	}
	return solution;
}
