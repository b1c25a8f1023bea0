import { METRIC_WORDS, type Words } from '#lib/model/words.ts';
import { outlookSteps, type Outlook, type OutlookInput } from '#lib/model/outlook.ts';
import { ContentCache } from './content-cache.ts';
import { inQuiet, inTurns, type QuietRun } from './in-turns.ts';

/** Answers that are kept: those of some lakes, for their pages and home. Each is half a megabyte. */
const KEPT = 120;

const kept = new ContentCache<QuietRun<Outlook | null>>(KEPT);

/**
 * The outlook of an input, run once for the same input. Nobody may change it: others are given it too.
 *
 * One at a time, in slices between which other requests are answered.
 */
export function outlookOf(input: OutlookInput): Promise<Outlook | null> {
	const run = runOf(input, (start) => ({ result: inTurns(start), hurry: () => undefined }));
	run.hurry();
	return run.result;
}

/** The same where nobody waits for it yet: other work goes first, until somebody asks for it too. */
export function outlookInQuiet(input: OutlookInput): Promise<Outlook | null> {
	return runOf(input, inQuiet).result;
}

type Run = QuietRun<Outlook | null>;
type Start = () => ReturnType<typeof outlookSteps>;

function runOf(input: OutlookInput, run: (start: Start) => Run): Run {
	const content = [input, wordsSample(input.words ?? METRIC_WORDS)];
	return kept.get(content, () => {
		const made = run(() => outlookSteps(input));
		made.result.catch(() => kept.forget(content));
		return made;
	});
}

/** Words are functions, so they are told apart by what they say. */
export function wordsSample(words: Words): string[] {
	return [
		words.thickness(0.123),
		words.requirement(0.123),
		words.depth(0.123),
		words.distance(12.3),
		words.mass(123),
		words.step(12.3),
		words.degreeDays(123),
		words.day('2026-01-23')
	];
}
