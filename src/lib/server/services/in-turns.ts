import type { Steps } from '#lib/model/steps.ts';
import { nextTurn } from './next-turn.ts';

/** A request takes some ten turns to be answered, so that it is the sum of as many that somebody waits. */
const SLICE_ms = 8;
/** Where nobody waits, pages come first: short slices with pauses in between. */
const QUIET_SLICE_ms = 5;
const QUIET_PAUSE_ms = 15;

let last: Promise<unknown> = Promise.resolve();
let lastQuiet: Promise<unknown> = Promise.resolve();
/** Of those that somebody waits for. */
let underWay = 0;

/** Runs long work after that which was asked for before, in slices with a turn for others in between. */
export function inTurns<Result>(start: () => Steps<Result>): Promise<Result> {
	underWay++;
	const result = last.then(() => sliced(start())).finally(() => underWay--);
	last = result.catch(() => undefined);
	return result;
}

/** Work that nobody waits for yet; `hurry` says that somebody does now. */
export interface QuietRun<Result> {
	result: Promise<Result>;
	hurry: () => void;
}

/** Runs long work one after the other, behind all that somebody waits for. */
export function inQuiet<Result>(start: () => Steps<Result>): QuietRun<Result> {
	let isQuiet = true;
	const result = lastQuiet.then(() => quietly(start(), () => isQuiet));
	lastQuiet = result.catch(() => undefined);
	return {
		result,
		hurry: () => {
			isQuiet = false;
		}
	};
}

async function sliced<Result>(steps: Steps<Result>): Promise<Result> {
	for (;;) {
		const step = slice(steps, SLICE_ms);
		if (step.done === true) return step.value;
		await nextTurn();
	}
}

async function quietly<Result>(steps: Steps<Result>, isQuiet: () => boolean): Promise<Result> {
	const mustWait = () => isQuiet() && underWay > 0;
	for (;;) {
		while (mustWait()) await last;
		const step = slice(steps, isQuiet() ? QUIET_SLICE_ms : SLICE_ms);
		if (step.done === true) return step.value;
		if (isQuiet()) await new Promise((resolve) => setTimeout(resolve, QUIET_PAUSE_ms));
		else await nextTurn();
	}
}

function slice<Result>(steps: Steps<Result>, slice_ms: number) {
	const until_ms = performance.now() + slice_ms;
	let step = steps.next();
	while (step.done !== true && performance.now() < until_ms) step = steps.next();
	return step;
}
