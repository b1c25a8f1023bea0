const HOUR_s = 3600;

/** Values further apart than this are no hours any more. */
export const LONGEST_STEP_s = 6 * HOUR_s;

/** So many equal distances in a row are the pace of the source; fewer are holes in it. */
const RUN = 3;

/** The distance that most neighbours have, `null` for fewer than two times. */
export function typicalStep_s(starts_s: readonly number[]): number | null {
	const gaps = gapsOf(starts_s).toSorted((a, b) => a - b);
	return gaps[Math.floor((gaps.length - 1) / 2)] ?? null;
}

/**
 * How long each time stands: to the next one, unless there is a hole before that. Forecasts go from
 * hours to steps of 3 or 6 hours; a step that is wider than most counts when it is kept up.
 */
export function stepsAfter_s(starts_s: readonly number[]): number[] {
	const gaps = gapsOf(starts_s);
	const typical = typicalStep_s(starts_s) ?? HOUR_s;
	const steps: number[] = [];
	for (const [at, gap] of gaps.entries()) {
		const isStep = gap <= LONGEST_STEP_s && (gap <= typical || runLength(gaps, at) >= RUN);
		steps.push(isStep ? gap : Math.min(steps.at(-1) ?? typical, LONGEST_STEP_s));
	}
	if (starts_s.length > 0) steps.push(Math.min(steps.at(-1) ?? HOUR_s, LONGEST_STEP_s));
	return steps;
}

/** The same for times that end what they stand for. */
export function stepsBefore_s(starts_s: readonly number[]): number[] {
	return stepsAfter_s(starts_s.map((at_s) => -at_s).toReversed()).toReversed();
}

function runLength(gaps: readonly number[], at: number): number {
	const gap = gaps[at];
	let first = at;
	let last = at;
	while (gaps[first - 1] === gap && at - first < RUN) first -= 1;
	while (gaps[last + 1] === gap && last - first < RUN) last += 1;
	return last - first + 1;
}

function gapsOf(starts_s: readonly number[]): number[] {
	return starts_s.slice(1).map((at_s, at) => at_s - (starts_s[at] ?? at_s));
}
