import { estimate } from '#lib/model/ensemble/estimate.ts';
import type { EnsembleInput } from '#lib/model/ensemble/run.ts';
import { compareWithC, type CComparison, type CRun } from './c-comparison.ts';
import { ensembleText, figuresOf, largestApart, readEnsemble } from './c-ensemble.ts';
import { withCProgram, type CProgram } from './c-program.ts';
import { inventedEnsemble } from './invented-ensemble.ts';
import { median, times_ms } from './median-time.ts';

const COMPARED =
	'draws, days, readings, holes, sorted quantiles, bounds and ice-out: the same equations, arrays and random numbers in both, in one thread; figures of every day agree';

/** C and TypeScript are the same equations only while their figures agree to this. */
const AGREEMENT_m = 1e-6;
const CALLS_A_ROUND = 3;
const WARM_UP = 3;

/** How big an ensemble is timed, and how often. */
export interface EnsembleBench {
	members: number;
	days: number;
	rounds: number;
	sizes: readonly [members: number, days: number][];
}

export interface SizeTime {
	members: number;
	days: number;
	readings: number;
	median_ms: number;
	/** Far below the median where something else keeps the machine busy. */
	fastest_ms: number;
	/** For one member and one day. */
	each_us: number;
}

export interface EnsembleReport extends SizeTime {
	compared: string;
	c: CComparison;
	sizes: SizeTime[];
}

/** Times the ensemble with all that is told of each day, in turn with the same in C where that can be. */
export function ensembleReport(bench: EnsembleBench): {
	ensemble: EnsembleReport;
	warnings: string[];
} {
	const { members, days, rounds } = bench;
	const input = inventedEnsemble(members, days);
	const own = () => estimate(input);
	for (let i = 0; i < WARM_UP; i++) own();
	const taken_ms: number[] = [];
	const inTurn = withCProgram('time-ensemble.c', (program): CRun => {
		const text = ensembleText(input, CALLS_A_ROUND);
		const figures = own().days.map(figuresOf);
		const c = rounded(rounds, program, text, () => taken_ms.push(...times_ms(own, CALLS_A_ROUND)));
		const largestDifference_m = largestApart(figures, c.days);
		return { status: 'ran', median_ms: median(c.times_ms), largestDifference_m };
	});
	if (inTurn.status !== 'ran') taken_ms.push(...times_ms(own, rounds * CALLS_A_ROUND));
	const time = sizeTime(input, taken_ms);
	const { c, warnings } = compareWithC('time-ensemble.c', time.median_ms, inTurn, AGREEMENT_m);
	const sizes = bench.sizes.map(([members, days]) => timeSize(members, days));
	return { ensemble: { ...time, compared: COMPARED, c, sizes }, warnings };
}

/** Round by round, so that a change of the machine's speed meets both. */
function rounded(
	rounds: number,
	program: CProgram,
	text: string,
	own: () => void
): ReturnType<typeof readEnsemble> {
	const runs = Array.from({ length: rounds }, () => {
		own();
		return readEnsemble(program(text));
	});
	return { days: runs[0]?.days ?? [], times_ms: runs.flatMap((run) => run.times_ms) };
}

function timeSize(members: number, days: number): SizeTime {
	const input = inventedEnsemble(members, days);
	const own = () => estimate(input);
	own();
	return sizeTime(input, times_ms(own, 5));
}

function sizeTime(
	{ members, weather, readings }: EnsembleInput,
	taken_ms: readonly number[]
): SizeTime {
	const median_ms = median(taken_ms);
	return {
		members,
		days: weather.length,
		readings: readings.length,
		median_ms,
		fastest_ms: Math.min(...taken_ms),
		each_us: (1000 * median_ms) / (members * weather.length)
	};
}
