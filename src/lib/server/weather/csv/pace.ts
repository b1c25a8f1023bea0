/** How often a record has a row. */
export interface Pace {
	step: 'daily' | 'hourly';
	/** Time from one row to the next. */
	step_s: number;
	/** Rows within an hour come at even distances, so that a missing one is noticed. */
	isEven: boolean;
	newestFirst: boolean;
}

const HOUR_s = 3600;
const DAY_s = 86_400;

/** Rows further apart than an hour stand for the hours up to the next: steps that stations use. */
const LONG_STEPS_s = [2, 3, 4, 6].map((hours) => hours * HOUR_s);

export interface Moment {
	wall_s: number;
	hasClock: boolean;
}

/** The pace of rows at these moments, in the order of the file; else why it can't be used. */
export function paceOf(moments: readonly Moment[]): Pace | string {
	const steps = moments.slice(1).map(({ wall_s }, at) => wall_s - (moments[at]?.wall_s ?? wall_s));
	const newestFirst =
		steps.filter((step) => step < 0).length > steps.filter((step) => step > 0).length;
	const gaps = gapsOf(moments.map(({ wall_s }) => wall_s));
	const hasClock = moments.some(({ hasClock }) => hasClock);
	if (!hasClock && steps.filter((step) => step === 0).length > steps.length / 2) {
		return 'there are several rows a day and no time of day; add a column with the time, or one row a day, and keep one station only';
	}
	const typical = gaps[Math.floor((gaps.length - 1) / 2)] ?? null;
	if (typical === null) return single(moments, newestFirst);
	if (typical > DAY_s / 2) {
		const shortest = gaps[0] ?? typical;
		if (gaps.length > 1 && shortest > 1.5 * DAY_s) {
			return `the rows are ${Math.round(typical / DAY_s)} days apart; one row a day or an hour is needed`;
		}
		return { step: 'daily', step_s: DAY_s, isEven: true, newestFirst };
	}
	if (typical > HOUR_s && !LONG_STEPS_s.includes(typical)) {
		return `the rows are ${round(typical / HOUR_s)} hours apart; one row a day, an hour or at most every 6 hours is needed`;
	}
	const even = gaps.filter((gap) => gap === typical).length;
	return { step: 'hourly', step_s: typical, isEven: even >= 0.8 * gaps.length, newestFirst };
}

/** Distances between neighbouring moments in time, shortest first. */
function gapsOf(walls_s: readonly number[]): number[] {
	const sorted = [...new Set(walls_s)].toSorted((a, b) => a - b);
	return sorted
		.slice(1)
		.map((wall_s, at) => wall_s - (sorted[at] ?? wall_s))
		.toSorted((a, b) => a - b);
}

/** One moment alone: with a time of day other than midnight it is an hour. */
function single(moments: readonly Moment[], newestFirst: boolean): Pace {
	const isHour = moments.some(({ wall_s, hasClock }) => hasClock && wall_s % DAY_s !== 0);
	return isHour
		? { step: 'hourly', step_s: HOUR_s, isEven: true, newestFirst }
		: { step: 'daily', step_s: DAY_s, isEven: true, newestFirst };
}

function round(hours: number): string {
	return String(Math.round(hours * 10) / 10);
}
