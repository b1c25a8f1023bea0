import type { Ask, FetchSettings, Trial, TrialCall } from './contract.ts';
import { emptyAnswer } from './empty-answer.ts';

/** Asks once and says what came and what was understood of it, with a mapping or without. */
export async function trySource(
	_call: TrialCall,
	_ask: Ask,
	_settings: FetchSettings
): Promise<Trial> {
	return {
		raw: '',
		isCut: false,
		answeredBy: null,
		status: null,
		contentType: null,
		suggestion: null,
		mapping: null,
		answer: emptyAnswer(),
		words: []
	};
}
