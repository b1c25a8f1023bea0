import type { UnitChoice } from '#lib/model/shown-length.ts';
import { METRIC_WORDS, wordsFor, type Words } from '#lib/model/words.ts';
import { wordsSample } from '../words-sample.ts';
import type { Job, Kind } from './jobs.ts';

/** A job as plain data, which another thread can be sent: words are functions, and so go by their units. */
export interface SentJob {
	job: Job;
	units: UnitChoice;
}

const CHOICES: readonly UnitChoice[] = (['metric', 'imperial'] as const).flatMap((measure) =>
	(['kg', 'lb'] as const).map((mass) => ({ measure, mass }))
);
const KNOWN = CHOICES.map((units) => ({ units, said: sampleText(wordsFor(units)) }));

/** `null` where its words are those of no units. */
export function sentJob<K extends Kind>({ kind, content }: Job<K>): SentJob | null {
	const { words = METRIC_WORDS, ...input } = content.input;
	const said = sampleText(words);
	const known = KNOWN.find((each) => each.said === said);
	return known ? { job: { kind, content: { ...content, input } }, units: known.units } : null;
}

export function receivedJob({ job: { kind, content }, units }: SentJob): Job {
	const input = { ...content.input, words: wordsFor(units) };
	return { kind, content: { ...content, input } };
}

function sampleText(words: Words): string {
	return wordsSample(words).join('|');
}
