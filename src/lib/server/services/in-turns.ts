import type { Steps } from '#lib/model/steps.ts';
import { nextTurn } from './next-turn.ts';

/** Longer than a page takes to answer, short enough that nobody notices the wait. */
const SLICE_ms = 25;

let last: Promise<unknown> = Promise.resolve();

/** Runs long work after that which was asked for before, in slices with a turn for others in between. */
export function inTurns<Result>(start: () => Steps<Result>): Promise<Result> {
	const result = last.then(() => sliced(start()));
	last = result.catch(() => undefined);
	return result;
}

async function sliced<Result>(steps: Steps<Result>): Promise<Result> {
	for (;;) {
		const until_ms = performance.now() + SLICE_ms;
		while (performance.now() < until_ms) {
			const step = steps.next();
			if (step.done === true) return step.value;
		}
		await nextTurn();
	}
}
