import { METRIC_WORDS } from '#lib/model/words.ts';
import type { Outlook, OutlookInput } from '#lib/model/outlook.ts';
import { ContentCache } from './content-cache.ts';
import { estimateInQuiet } from './estimates/estimate.ts';
import type { QuietRun } from './in-turns.ts';
import { wordsSample } from './words-sample.ts';

/** Answers that are kept: those of some lakes, for their pages and home. Each is half a megabyte. */
const KEPT = 120;

const kept = new ContentCache<QuietRun<Outlook | null>>(KEPT);

/** The outlook of an input, run once for the same input. Nobody may change it: others are given it too. */
export function outlookOf(input: OutlookInput): Promise<Outlook | null> {
	const run = runOf(input);
	run.hurry();
	return run.result;
}

/** The same where nobody waits for it yet: other work goes first, until somebody asks for it too. */
export function outlookInQuiet(input: OutlookInput): Promise<Outlook | null> {
	return runOf(input).result;
}

function runOf(input: OutlookInput): QuietRun<Outlook | null> {
	const content = [input, wordsSample(input.words ?? METRIC_WORDS)];
	return kept.get(content, () => {
		const made = estimateInQuiet({ kind: 'outlook', content: { input } });
		// An answer is kept without what it was made from, which may be ten times as large.
		const letGo = () => (made.hurry = nothing);
		made.result.then(letGo, () => kept.forget(content));
		return made;
	});
}

/** Made out here, so that it holds nothing. */
function nothing(): void {
	// What is done cannot be hurried.
}
