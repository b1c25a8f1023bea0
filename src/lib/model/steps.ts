/** Long work in small steps, so that whoever runs it can do other things in between. */
export type Steps<Result> = Generator<void, Result, void>;

/** All of it at once. */
export function finish<Result>(steps: Steps<Result>): Result {
	for (;;) {
		const step = steps.next();
		if (step.done === true) return step.value;
	}
}
