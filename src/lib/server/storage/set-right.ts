/** Clocks are set right by seconds all the time: what lies ahead of now by less is no sign of one that was ahead. */
export const SLACK_MS = 15 * 60_000;

/** Later than anything is put off to by a clock that is right, as text. */
export function laterThanEver(now: Date, longest_min: number): string {
	return new Date(now.getTime() + longest_min * 60_000 + SLACK_MS).toISOString();
}
