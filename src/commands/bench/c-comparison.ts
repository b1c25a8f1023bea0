import type { NoProgram } from './c-program.ts';

/** How the same equations in C fared. */
export interface CComparison {
	status: 'ran' | 'disagrees' | NoProgram['status'];
	median_ms: number | null;
	/** TypeScript over C. */
	ratio: number | null;
	largestDifference_m: number | null;
}

/** What C needed and said, or why it did neither. */
export type CRun = { status: 'ran'; median_ms: number; largestDifference_m: number } | NoProgram;

/** Gives a ratio only where both say the same, and a warning where there is none. */
export function compareWithC(
	file: string,
	own_ms: number,
	c: CRun,
	agreement_m: number
): { c: CComparison; warnings: string[] } {
	const nothing = { median_ms: null, ratio: null, largestDifference_m: null };
	if (c.status === 'noCompiler')
		return {
			c: { status: c.status, ...nothing },
			warnings: [`there is no cc here: the ratio to ${file} is not measured`]
		};
	if (c.status === 'failed')
		return {
			c: { status: c.status, ...nothing },
			warnings: [`${file} could not be compiled or run: ${c.message}`]
		};
	const { median_ms, largestDifference_m } = c;
	if (!(largestDifference_m <= agreement_m))
		return {
			c: { status: 'disagrees', ...nothing, largestDifference_m },
			warnings: [
				`${file} and the model differ by up to ${(largestDifference_m * 1000).toPrecision(3)} mm: they are not the same equations, so no ratio is given`
			]
		};
	return {
		c: { status: 'ran', median_ms, ratio: own_ms / median_ms, largestDifference_m },
		warnings: []
	};
}
