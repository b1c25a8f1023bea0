import type { Change } from '#lib/model/ensemble/what-if.ts';
import type { Forecast } from '#lib/model/forecast.ts';
import type { OutlookInput } from '#lib/model/outlook.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { ReadingsEffect } from '#lib/model/readings-effect.ts';
import { wordsIn } from '../words.ts';
import { answerOf } from './answer.ts';
import type { FromWorker, ToWorker } from './protocol.ts';

type Model = (input: OutlookInput, change: Change, members: number) => Forecast | null;
type Effect = (input: OutlookInput, more: readonly Reading[]) => ReadingsEffect | null;

/** Answers messages by the model: what the worker does, apart from being one. */
export function serve(model: Model, effect: Effect): (message: ToWorker) => FromWorker | null {
	let input: OutlookInput | null = null;
	return (message) => {
		if (message.kind === 'input') {
			// Its sentences are in the units that are asked for, however often it is asked.
			input = { ...message.input };
			return null;
		}
		const { id } = message;
		if (input === null) return { kind: 'failed', id, message: 'asked before the input came' };
		try {
			if (message.kind === 'readings') {
				input.words = wordsIn(message.units);
				return { kind: 'effect', id, effect: effect(input, message.more) };
			}
			const forecast = model(input, message.change, message.members);
			return { kind: 'answer', id, answer: forecast && answerOf(forecast) };
		} catch (cause) {
			return {
				kind: 'failed',
				id,
				message: cause instanceof Error ? cause.message : String(cause)
			};
		}
	};
}
